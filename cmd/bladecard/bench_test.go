package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"testing"

	"bladecard/render/page"
	"bladecard/samples/bench"
)

// BenchmarkJob plans a job of six screens and writes its cards and its setup sheet to memory, with
// a shop that is ready.
func BenchmarkJob(b *testing.B) {
	c := &call{stdout: io.Discard, stderr: io.Discard}
	d := documents{size: page.Sizes[0].Name, flip: flipLong}
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		l, err := c.plan("job.toml", bench.Job(n, 6, ""))
		if err != nil {
			b.Fatal("job", n, err)
		}
		var out bytes.Buffer
		if err := d.cards(&out, l); err != nil {
			b.Fatal(err)
		}
		if err := d.sheet(&out, l); err != nil {
			b.Fatal(err)
		}
		n++
	}
}

// BenchmarkBuild builds folders of jobs of six screens, from nothing and with nothing changed; with
// -short a small one.
func BenchmarkBuild(b *testing.B) {
	folders := []int{100, 1000}
	if testing.Short() {
		folders = []int{10}
	}
	for _, n := range folders {
		dir := b.TempDir()
		if err := bench.Folder(filepath.Join(dir, "jobs"), n, 6, ""); err != nil {
			b.Fatal(err)
		}
		build := func(b *testing.B, to string) {
			var said bytes.Buffer
			if code := run([]string{"build", filepath.Join(dir, "jobs"), "-o", to, "--quiet"}, nil, io.Discard, &said); code != exitDone {
				b.Fatal(code, said.String())
			}
		}
		b.Run(fmt.Sprintf("all of %d", n), func(b *testing.B) {
			b.ReportAllocs()
			for i := range b.N {
				build(b, filepath.Join(dir, fmt.Sprint(b.N, "-", i)))
			}
		})
		b.Run(fmt.Sprintf("none of %d", n), func(b *testing.B) {
			build(b, filepath.Join(dir, "out"))
			b.ResetTimer()
			b.ReportAllocs()
			for range b.N {
				build(b, filepath.Join(dir, "out"))
			}
		})
	}
}
