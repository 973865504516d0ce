package plugin

import (
	"runtime/metrics"
	"time"
)

// watchEvery is how often the child looks at its own memory.
const watchEvery = 10 * time.Millisecond

// taken is how much memory this process has in use, in bytes.
func taken() uint64 {
	sample := []metrics.Sample{
		{Name: "/memory/classes/total:bytes"},
		{Name: "/memory/classes/heap/free:bytes"},
		{Name: "/memory/classes/heap/released:bytes"},
	}
	metrics.Read(sample)
	return sample[0].Value.Uint64() - sample[1].Value.Uint64() - sample[2].Value.Uint64()
}

// watch calls over once this process has taken more than so many bytes. The cap
// on a plugin's own memory is kept by the runtime; this one is for what a plugin
// can make the runtime itself take: a stack for bottomless calls, tables without
// end, machine code.
func watch(most uint64, over func()) {
	go func() {
		for range time.Tick(watchEvery) {
			if taken() > most {
				over()
				return
			}
		}
	}()
}
