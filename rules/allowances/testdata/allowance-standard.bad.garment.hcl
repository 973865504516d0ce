# Usher's jacket, Harbour Lane Playhouse. The hem was turned up by 3 cm on an
# older jacket and the figure came along; the side seams were widened for a
# fitting that is over.
garment "usher-jacket" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    cut = 2
    edge "top" { line = [[0, 0], [22, 0]] }
    edge "side" {
      line      = [[22, 0], [22, 60]]
      allowance = 1.5 # fault allowance-standard warning 5mm
    }
    edge "hem" {
      line      = [[22, 60], [0, 60]]
      finish    = "hem"
      allowance = 3 # fault allowance-standard warning 10mm
    }
    edge "edge" { line = [[0, 60], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "top" { line = [[60, 0], [40, 0]] }
    edge "side" {
      line      = [[40, 0], [40, 60]]
      allowance = 1.5 # fault allowance-standard warning 5mm
    }
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
