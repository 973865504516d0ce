// A plugin that misbehaves in the way that the garment's name tells it to. To a
// garment of any other name it gives a proper answer.
package main

import (
	"bufio"
	"fmt"
	"os"
	"strings"
)

func main() {
	in := bufio.NewReader(os.Stdin)
	fmt.Print("plugin\t1\n")
	for {
		number, name, figures := table(in)
		answer := fmt.Sprintf("answer\t1\t%s\ncount\tnote\tgarment\t%d\t0\tratio\t%[2]d figures\nend\n", number, figures)
		switch name {
		case "endless-loop":
			for i := 0; ; i++ {
			}
		case "calls":
			fmt.Fprintln(os.Stderr, calls(60))
		case "deep-calls":
			fmt.Fprintln(os.Stderr, deep(0))
		case "memory":
			var kept [][]byte
			for {
				kept = append(kept, make([]byte, 1<<20))
			}
		case "counts-up":
			asked++
			answer = strings.Replace(answer, fmt.Sprintf("%d figures", figures), fmt.Sprintf("asked %d times", asked), 1)
		case "hoard":
			kept := make([]byte, 1<<20)
			for i := range kept {
				kept[i] = byte(i)
			}
			hoard = append(hoard, kept)
		case "output":
			for range 1 << 10 { // a gigabyte
				fmt.Print(strings.Repeat("x", 1<<20))
			}
		case "notes":
			for range 1 << 10 {
				fmt.Fprint(os.Stderr, strings.Repeat("x", 1<<20))
			}
		case "no-answer":
			answer = fmt.Sprintf("answer\t1\t%s\ncount\tnote\tgarment\t1\nend\n", number)
		case "not-text":
			answer = "\xff\xfe\nend\n"
		case "wrong-number":
			answer = strings.Replace(answer, "\t1\t"+number, "\t1\t999", 1)
		case "wrong-address":
			answer = strings.Replace(answer, "garment", "shell.nowhere", 1)
		case "twice":
			answer += answer
		case "exit":
			fmt.Fprintln(os.Stderr, "I will not")
			os.Exit(1)
		case "leave":
			os.Exit(0)
		case "fall":
			panic("out of thread")
		case "open":
			_, err := os.ReadFile("/etc/hostname")
			fmt.Fprintln(os.Stderr, err)
		case "write":
			err := os.WriteFile("left-behind", nil, 0o600)
			fmt.Fprintln(os.Stderr, err)
		case "look-about":
			answer = strings.Replace(answer, fmt.Sprintf("%d figures", figures), fmt.Sprintf("%d variables, %v", len(os.Environ()), os.Args), 1)
		}
		fmt.Print(answer)
		if name == "once" {
			os.Exit(0)
		}
	}
}

// asked is how often it was asked about counts-up.
var asked int

// hoard is what is kept from garment to garment.
var hoard [][]byte

func table(in *bufio.Reader) (number, name string, figures int) {
	for {
		line, err := in.ReadString('\n')
		if err != nil {
			os.Exit(0)
		}
		c := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		switch {
		case c[0] == "table":
			number = c[2]
		case c[0] == "garment" && c[1] == "name":
			name = c[2]
		case c[0] == "end":
			return number, name, figures
		}
		figures++
	}
}

func calls(n int) int {
	if n < 2 {
		return n
	}
	return calls(n-1) + calls(n-2)
}

func deep(n int) int { return deep(n+1) + 1 }
