package svg

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"bladecard/render/canvas"
)

// sketch draws a filled square, a dashed line and a text.
func sketch(c canvas.Canvas) error {
	var square, line canvas.Path
	square.Move(5, 5)
	square.Line(15, 5)
	square.Line(15, 15)
	square.Line(5, 15)
	square.Close()
	c.Draw(square, &canvas.Color{R: 200}, canvas.Pen{})
	line.Move(20, 10)
	line.Line(40, 10)
	c.Draw(line, nil, canvas.Pen{Color: canvas.Black, WidthMM: 1, DashMM: []float64{4, 4}})
	c.Text(5, 25, "50 µm <&>", canvas.Font{SizePT: 12}, canvas.Black, 0)
	return nil
}

func TestWrite(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, 50, 30, sketch); err != nil {
		t.Fatal(err)
	}
	dec := xml.NewDecoder(bytes.NewReader(b.Bytes()))
	for {
		if _, err := dec.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("not XML: %v\n%s", err, b.String())
		}
	}
	for _, want := range []string{`viewBox="0 0 50 30"`, `d="M5 5L15 5L15 15L5 15Z" fill="#c80000"`, `stroke-dasharray="4 4"`, "50 µm &lt;&amp;&gt;"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %s in\n%s", want, b.String())
		}
	}
}
