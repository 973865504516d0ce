# Waitress dress, Harbour Lane Playhouse. The bust dart's tip was lifted after
# the fitting and its mouth left where it was; the waist was ruled straight
# across its dart.
garment "waitress-dress" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [22, 0]] }
    edge "side"   { line = [[22, 0], [22, 6], [22, 8], [18.31, 30]] }
    edge "waist"  { line = [[18.31, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
    dart "bust" { # fault dart-legs warning 4.8mm
      on     = side
      at     = 7
      intake = 2
      tip    = [10, 4]
    }
    dart "waist" { # fault dart-legs warning 11.4deg
      on     = waist
      at     = 8.31
      intake = 2
      tip    = [10, 20]
    }
  }
}
