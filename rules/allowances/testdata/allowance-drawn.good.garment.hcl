# Court mantle, Harbour Lane Playhouse. The cut line lies 1.2 cm
# from the side seam all along.
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
      cut_line = { line = [[19.19, 3.86], [27.19, 69.86]] }
    }
    edge "hem"    { line = [[26, 70], [0, 72]] }
    edge "centre" { line = [[0, 72], [0, 8]] }
  }
}
