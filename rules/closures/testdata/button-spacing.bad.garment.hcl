# A waistcoat that buttons in front. No button sits at the waist, and they are too
# large for the extension.
garment "waistcoat" {
  title = "Waistcoat with a buttoned front"
  unit  = "cm"
}

body {
  bust_girth  = 88
  waist_girth = 70
}

level "bust" {
  y    = 22
  body = body.bust_girth
}
level "waist" {
  y    = 40
  body = body.waist_girth
}

layer "shell" {
  side = "outer"

  piece "front" {
    cut = 2
    edge "front"   { line = [[0, 12], [0, 52]] }
    edge "hem"     { line = [[0, 52], [24, 48]] }
    edge "side"    { line = [[24, 48], [24, 24]] }
    edge "armhole" { line = [[24, 24], [18, 0]] }
    edge "neck"    { line = [[18, 0], [0, 12]] }
  }
}

closure "front" {
  kind      = "button"
  edges     = [shell.front.front, shell.front.front]
  buttons   = [2, 10, 18, 26.7, 34.5] # fault button-spacing warning 13.0mm
  diameter  = 2
  thickness = 0.4
  extension = 1.2 # fault button-spacing warning 12mm
}
