# Pierrot blouse, Harbour Lane Playhouse. The front had a seam at the centre and
# is now cut on the fold.
garment "pierrot-blouse" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold      = centre
    allowance = 1
    edge "neck" { line = [[0, 0], [22, 0]] }
    edge "side" { line = [[22, 0], [22, 60]] }
    edge "hem"  { line = [[22, 60], [0, 60]] }
    edge "centre" {
      line      = [[0, 60], [0, 0]]
      allowance = 1.5 # fault allowance-fold error 15mm
    }
  }
}
