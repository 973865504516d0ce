# A lined skirt whose lining hangs free.
# When the shell was shortened by 2 cm the lining was left.
garment "skirt" {
  title = "Skirt with a free lining"
  unit  = "cm"
}

level "waist" { y = 0 }
level "hip"   { y = 20 }

layer "shell" {
  side = "outer"

  piece "front" {
    fold = centre
    edge "waist" { line = [[0, 0], [18, 0]] }
    edge "side"  { line = [[18, 0], [24, 20], [27, 60]] }
    edge "hem" {
      line   = [[27, 60], [0, 60]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 60], [0, 0]] }
  }
}

layer "lining" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "waist" { line = [[0, 0], [18, 0]] }
    edge "side"  { line = [[18, 0], [23.5, 20], [24.4, 59.2]] }
    edge "hem" {
      line   = [[24.4, 59.2], [0, 59.2]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 59.2], [0, 0]] } # fault hem-drop warning 8mm
  }
}

inside "front" {
  outer = shell.front
  inner = lining.front
}
