package build

import (
	"context"
	"fmt"
	"os"
	"sync"

	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/cmd/bladecard/internal/exit"
)

// build makes the jobs of one call.
type build struct {
	Options
	out     *disk.Folder
	program string              // sum of this very program, templates and all
	inputs  func() []disk.Input // all that the build reads
	gate    sync.RWMutex        // held while a job is written; closed for good when the build is stopped
	sums    sync.Map            // sum of shops and logos by path
}

// Run makes every job under the paths on so many cores, and returns the exit code.
func Run(stop context.Context, paths []string, cores int, o Options) int {
	out, err := disk.Open(o.Dir, func() { fmt.Fprintf(o.Stderr, "waiting: another bladecard is at work in %s\n", o.Dir) })
	var b *build
	if err == nil {
		defer out.Close()
		b, err = newBuild(o, out, paths)
	}
	if err != nil {
		disk.Say(o.Stderr, err)
		return exit.File
	}
	return b.run(stop, paths, cores)
}

func newBuild(o Options, out *disk.Folder, paths []string) (*build, error) {
	program, err := sumOfProgram()
	if err != nil {
		return nil, err
	}
	return &build{
		Options: o, out: out, program: program,
		inputs: sync.OnceValue(func() []disk.Input { return allInputs(paths, o.NewMaker()) }),
	}, nil
}

// sumOfProgram is the sum of this very program, which holds the templates too.
func sumOfProgram() (string, error) {
	self, err := os.Executable()
	if err != nil {
		return "", err
	}
	f, err := os.Open(self)
	if err != nil {
		return "", err
	}
	defer f.Close()
	return disk.SumOf(f)
}

// allInputs are the jobs under the paths, their shops, logos and press logs.
func allInputs(paths []string, m Maker) []disk.Input {
	var list []string
	known := map[string]bool{}
	find(paths, func(s source) bool {
		for _, path := range append(m.Inputs(s.path), s.path) {
			if !known[path] {
				known[path] = true
				list = append(list, path)
			}
		}
		return true
	})
	return disk.Inputs(list...)
}

// run hands the files out and says what became of them in the order in which they were found.
func (b *build) run(stop context.Context, paths []string, cores int) int {
	type task struct {
		source
		done chan result
	}
	waiting, inOrder := make(chan task), make(chan task, 8*cores)
	go func() {
		defer close(waiting)
		defer close(inOrder)
		find(paths, apart(func(s source) bool {
			t := task{source: s, done: make(chan result, 1)}
			select {
			case inOrder <- t:
			case <-stop.Done():
				return false
			}
			select {
			case waiting <- t:
				return true
			case <-stop.Done():
				return false
			}
		}))
	}()
	var workers sync.WaitGroup
	for range cores {
		workers.Go(func() {
			w := &worker{build: b, maker: b.NewMaker()}
			for t := range waiting {
				t.done <- w.job(t.source)
			}
		})
	}
	s := b.newSayer(paths)
	defer s.bar.clear()
	for t := range inOrder {
		select {
		case r := <-t.done:
			s.say(r)
		case <-stop.Done():
			return b.stopped(s)
		}
	}
	if stop.Err() != nil {
		return b.stopped(s)
	}
	workers.Wait()
	return s.summary()
}

// stopped lets what is being written come to its end; nothing more is begun.
func (b *build) stopped(s *sayer) int {
	b.gate.Lock()
	s.total("stopped; ")
	return exit.Stopped
}
