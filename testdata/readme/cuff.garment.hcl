garment "cuff" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "cuff" {
    allowance = 2
    edge "top"   { smooth = [[0, 0], [6, -0.8], [12, -0.8], [18, 0]] }
    edge "left"  { line = [[18, 0], [17.2, 4.9]] }
    edge "wrist" { line = [[17.2, 4.9], [0.8, 4.9]] }
    edge "right" { line = [[0.8, 4.9], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "cuff" {
    allowance = 2
    edge "top"   { smooth = [[0, 0], [6, -0.5], [12, -0.8], [18, 0]] }
    edge "left"  { line = [[18, 0], [17.2, 4.9]] }
    edge "wrist" { line = [[17.2, 4.9], [0.8, 4.9]] }
    edge "right" { line = [[0.8, 4.9], [0, 0]] }
  }
}
share "round" {
  outer = [shell.cuff.right, shell.cuff.top, shell.cuff.left, shell.cuff.wrist]
  inner = [lining.cuff.right, lining.cuff.top, lining.cuff.left, lining.cuff.wrist]
}
closure "wrist" {
  kind  = "tape"
  tape  = tape.hooks
  edges = [shell.cuff.left, shell.cuff.right]
}
tape "hooks" {
  kind  = "hook-and-eye"
  pitch = mm(19)
  head  = mm(9)
  clear = mm(1.5)
}
