# Major-domo's coat, Harbour Lane Playhouse. The cap has 1.6 cm to be eased
# into the armhole.
garment "major-domo-coat" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    edge "armhole" { length = 22.6 }
  }
  piece "back" {
    edge "armhole" { length = 23.8 }
  }
  piece "sleeve" {
    cut = 2
    edge "cap" { length = 48 }
  }
}

seam "armhole" {
  join = [shell.sleeve.cap, [shell.front.armhole, shell.back.armhole]]
  ease = [0, 3]
}
