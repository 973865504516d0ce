house "harbour-lane" { unit = "cm" }
allowance "default" { width = 1 }
allowance "closure" { width = 1.5 }
allowance "hem" { width = 3 }
tape "hook-and-eye" {
  kind         = "hook-and-eye"
  pitch        = mm(19)
  head         = mm(8)
  clear        = mm(1.5)
  width_closed = [mm(24)]
}
