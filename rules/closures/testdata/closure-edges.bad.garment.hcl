# A quick-change waistcoat buttons at the front; the left front was recut with a
# higher neck and the right one was not.
garment "quick-change-waistcoat" {
  title = "Quick-change waistcoat"
  unit  = "cm"
}

layer "shell" {
  side = "outer"

  piece "left" {
    edge "front"  { line = [[0, 20], [0, 52.4]] }
    edge "hem"    { line = [[0, 52.4], [4, 58], [25, 52]] }
    edge "side"   { line = [[25, 52], [25, 26]] }
    edge "armhole" { smooth = [[25, 26], [19, 18], [18, 2]] }
    edge "neck"   { line = [[18, 2], [9, 0], [0, 20]] }
  }
  piece "right" {
    edge "front"  { line = [[0, 20.5], [0, 52.4]] }
    edge "hem"    { line = [[0, 52.4], [4, 58], [25, 52]] }
    edge "side"   { line = [[25, 52], [25, 26]] }
    edge "armhole" { smooth = [[25, 26], [19, 18], [18, 2]] }
    edge "neck"   { line = [[18, 2], [9, 0], [0, 20.5]] }
  }
}

closure "front" {
  kind  = "button"
  edges = [shell.left.front, shell.right.front] # fault closure-edges error 5mm
}
