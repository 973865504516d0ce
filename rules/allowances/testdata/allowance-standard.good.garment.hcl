# Usher's jacket, Harbour Lane Playhouse. The house's allowances hold
# throughout, but for the top, which is bound and carries none.
garment "usher-jacket" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    cut = 2
    edge "top" {
      line      = [[0, 0], [22, 0]]
      finish    = "bound"
      role      = "bound"
      allowance = 0
    }
    edge "side" { line = [[22, 0], [22, 60]] }
    edge "hem" {
      line   = [[22, 60], [0, 60]]
      finish = "hem"
    }
    edge "edge" { line = [[0, 60], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "top" { line = [[60, 0], [40, 0]] }
    edge "side" { line = [[40, 0], [40, 60]] }
    edge "hem" {
      line   = [[40, 60], [60, 60]]
      finish = "hem"
    }
    edge "centre" { line = [[60, 60], [60, 0]] }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
closure "front" {
  kind  = "button"
  edges = [shell.front.edge, shell.front.edge]
}
