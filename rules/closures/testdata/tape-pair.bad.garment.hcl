# A bodice that closes down its back with hook tape and eye tape. The two came
# from different makers, and a tenth of a millimetre is lost from one to the next.
garment "bodice" {
  title = "Bodice with hooks and eyes"
  unit  = "cm"
}

tape "hooks" {
  kind  = "hook-and-eye"
  pitch = mm(19)
  head  = mm(8)
  clear = mm(2)
}
tape "eyes" {
  kind  = "hook-and-eye"
  pitch = mm(19.1)
  head  = mm(8)
  clear = mm(2)
}

layer "shell" {
  side = "outer"

  piece "back" {
    cut = 2
    edge "neck"   { line = [[0, 0], [18, 2]] }
    edge "side"   { line = [[18, 2], [18, 40]] }
    edge "hem"    { line = [[18, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
}

closure "back" { # fault tape-pair error 2.0mm
  kind       = "tape"
  tape       = tape.hooks
  other_tape = tape.eyes
  edges      = [shell.back.centre, shell.back.centre]
}
