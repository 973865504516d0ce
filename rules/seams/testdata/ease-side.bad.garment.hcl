# Major-domo's coat, Harbour Lane Playhouse. The cap was flattened until it
# was shorter than the armhole.
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
    edge "cap" { length = 46.3 }
  }
}

seam "armhole" {
  join = [shell.sleeve.cap, [shell.front.armhole, shell.back.armhole]] # fault ease-side error 1mm
  ease = [0, 3]
}
