# Court mantle, Harbour Lane Playhouse. The cut line was drawn
# by eye at the hem of the side seam.
garment "court-mantle" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold      = centre
    allowance = 1.2
    edge "neck" {
      curve     = [[0, 8], [4, 8], [7, 4], [7, 0]]
      finish    = "faced"
      allowance = 0.6
    }
    edge "shoulder" { line = [[7, 0], [18, 4]] }
    edge "side" {
      line     = [[18, 4], [26, 70]]
      cut_line = { line = [[19.19, 3.86], [26.99, 69.88]] } # fault allowance-drawn error 2.0mm
    }
    edge "hem"    { line = [[26, 70], [0, 72]] }
    edge "centre" { line = [[0, 72], [0, 8]] }
  }
}
