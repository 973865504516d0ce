# A rink dress and its built-in brief are bound together along the top and round
# the armhole. The brief's back was recut after a fitting, the shell's was not;
# and the notch for the strap was forgotten.
garment "rink-dress" {
  title = "Rink dress with a built-in brief"
  unit  = "cm"
}

layer "shell" {
  side = "outer"

  piece "front" {
    fold = centre
    edge "top"     { smooth = [[0, 0], [6, -1.5], [12, -8]] }
    edge "armhole" { smooth = [[12, -8], [16, 0], [22, 4]] }
    edge "side"    { line = [[22, 4], [21, 24]] }
    edge "hem"     { line = [[21, 24], [0, 24]] }
    edge "centre"  { line = [[0, 24], [0, 0]] }
    notch "strap" {
      on = top
      at = 9
    }
  }
  piece "back" {
    fold = centre
    edge "top"     { smooth = [[0, -2], [6, -3], [12, -8]] }
    edge "armhole" { smooth = [[12, -8], [17, 0], [22, 4]] }
    edge "side"    { line = [[22, 4], [21, 24]] }
    edge "hem"     { line = [[21, 24], [0, 24]] }
    edge "centre"  { line = [[0, 24], [0, -2]] }
  }
}

layer "brief" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "top" { # fault shared-edge error
      smooth = [[0, 0], [6, -1.5], [12, -8]]
    }
    edge "armhole" { smooth = [[12, -8], [16, 0], [22, 4]] }
    edge "side"    { line = [[22, 4], [21, 24]] }
    edge "hem"     { line = [[21, 24], [0, 24]] }
    edge "centre"  { line = [[0, 24], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "top"     { smooth = [[0, -2.8], [6, -3.4], [12, -8]] }
    edge "armhole" { smooth = [[12, -8], [16.2, -0.8], [22, 4]] }
    edge "side"    { line = [[22, 4], [21, 24]] }
    edge "hem"     { line = [[21, 24], [0, 24]] }
    edge "centre"  { line = [[0, 24], [0, -2.8]] }
  }
}

share "front_top" {
  outer = [shell.front.top]
  inner = [brief.front.top]
}

share "back_top" {
  outer = [shell.back.top]
  inner = [brief.back.top] # fault shared-edge error 3mm
}

share "armhole" {
  outer = [shell.front.armhole, shell.back.armhole]
  inner = [brief.front.armhole, brief.back.armhole] # fault shared-edge error 1.5mm
}

seam "shell_side" { join = [shell.front.side, shell.back.side] }
seam "brief_side" { join = [brief.front.side, brief.back.side] }
