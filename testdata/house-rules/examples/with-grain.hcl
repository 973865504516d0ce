# An apron's front, drawn with a grain line.
garment "apron" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    grain = [[10, 5], [10, 50]]
    edge "top" { line = [[0, 0], [30, 0]] }
    edge "side" { line = [[30, 0], [30, 60]] }
    edge "hem" { line = [[30, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 0]] }
  }
}
