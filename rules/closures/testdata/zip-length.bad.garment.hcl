# A skirt with a zip in the back. The opening was lengthened by 1.6 cm, and no
# zip is of that length.
garment "skirt" {
  title = "Skirt with a zip"
  unit  = "cm"
}

layer "shell" {
  side = "outer"

  piece "back" {
    cut = 2
    edge "waist"  { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [22, 60]] }
    edge "hem"    { line = [[22, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 0]] }

    notch "zip" {
      on = centre
      at = 38.4
    }
  }
}

closure "zip" {
  kind  = "zip"
  edges = [shell.back.centre, shell.back.centre] # fault zip-length warning 200mm
  from  = zip
  to    = end
  stock = [18, 20, 22, 25]
}
