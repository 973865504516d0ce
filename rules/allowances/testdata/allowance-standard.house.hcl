house "harbour-lane" { unit = "cm" }

allowance "default" { width = 1 }
allowance "closure" { width = 2.5 }
allowance "hem" { width = 4 }
