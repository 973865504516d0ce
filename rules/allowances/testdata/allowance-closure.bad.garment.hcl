# Ball gown, Harbour Lane Playhouse. The zip was moved from the side to the
# centre back, and the allowance stayed where it was.
garment "ball-gown" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "back" {
    cut       = 2
    allowance = 1
    edge "top" { line = [[60, 0], [40, 0]] }
    edge "side" {
      line      = [[40, 0], [40, 60]]
      allowance = 2.5
    }
    edge "hem"    { line = [[40, 60], [60, 60]] }
    edge "centre" { line = [[60, 60], [60, 0]] } # fault allowance-closure error 10mm
  }
}

closure "back" {
  kind  = "zip"
  edges = [shell.back.centre, shell.back.centre]
}
