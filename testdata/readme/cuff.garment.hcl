garment "cuff" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "cuff" {
    allowance = 1
    edge "top"  { smooth = [[0, 0], [6, -0.8], [12, -0.8], [18, 0]] }
    edge "rest" { line = [[18, 0], [17.2, 4.9], [0.8, 4.9], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "cuff" {
    allowance = 1.2
    edge "top"  { smooth = [[0, 0], [6, -0.5], [12, -0.8], [18, 0]] }
    edge "rest" { line = [[18, 0], [17.2, 4.9], [0.8, 4.9], [0, 0]] }
  }
}
share "round" {
  outer = [shell.cuff.top, shell.cuff.rest]
  inner = [lining.cuff.top, lining.cuff.rest]
}
