# Chorus skirt, Harbour Lane Playhouse. The waist of size 40 was
# mistyped when the table was copied.
garment "chorus-skirt" {
  unit      = "cm"
  sizes     = ["36", "38", "40", "42", "44"]
  base_size = "36"
}

size "36" {
  bust_girth  = 84
  waist_girth = 66
}
size "38" {
  bust_girth  = 88
  waist_girth = 70
}
size "40" {
  bust_girth  = 92
  waist_girth = 79 # fault size-step error 50mm
}
size "42" {
  bust_girth  = 96
  waist_girth = 78
}
size "44" {
  bust_girth  = 100
  waist_girth = 82
}

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist"  { line = [[0, 0], [body.waist_girth / 4, 0]] }
    edge "side"   { line = [[body.waist_girth / 4, 0], [body.waist_girth / 4 + 6, 60]] }
    edge "hem"    { line = [[body.waist_girth / 4 + 6, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "waist"  { line = [[0, 0], [body.waist_girth / 4, 0]] }
    edge "side"   { line = [[body.waist_girth / 4, 0], [body.waist_girth / 4 + 6, 60]] }
    edge "hem"    { line = [[body.waist_girth / 4 + 6, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 0]] }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
