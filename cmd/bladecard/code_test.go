package main

import (
	"bytes"
	"image/png"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
)

// TestCodeOnPaper: the codes on the back of a printed card and on the setup sheet, at the size of the paper, are read
// by another library, and say job, place, mesh, blade, angle, strokes, flash and film.
func TestCodeOnPaper(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm is not on this machine")
	}
	dir := t.TempDir()
	for _, c := range []struct {
		args  []string
		pages []string // of pdftoppm: which page, and which part of it, in pixels of 300 dpi
		file  string
		want  []string
	}{
		{
			[]string{"cards", "--single"}, []string{"-f", "2", "-l", "2"}, "lantern-crew-cards.pdf",
			[]string{"L-031 full back", "white base", "1/1-3", "150-48 EOM 13 µm", "70 360 mm 15° (10–25°)", "2 strokes, 1.1 bar", "FLASH 2.4 s", "40 µm (27–61 µm)"},
		},
		{
			[]string{"sheet"}, []string{"-f", "1", "-l", "1", "-x", "1900", "-y", "60", "-W", "560", "-H", "420"}, "lantern-crew-sheet.pdf",
			[]string{"L-031 Lantern Night crew shirts", "1/1 150-48 70 15° 2 x 1.1 2.4 s", "2/1 "},
		},
	} {
		var out, errs bytes.Buffer
		if code := run(append(c.args, "../../samples/jobs/lantern-crew.toml", "--lang", "en", "--paper", "a4", "-o", dir), nil, &out, &errs); code != exitDone {
			t.Fatalf("exit code %d: %s", code, &errs)
		}
		page, err := exec.Command("pdftoppm", append(append([]string{"-r", "300", "-gray", "-png"}, c.pages...), filepath.Join(dir, c.file))...).Output()
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(page))
		if err != nil {
			t.Fatal(err)
		}
		bmp, err := gozxing.NewBinaryBitmapFromImage(img)
		if err != nil {
			t.Fatal(err)
		}
		got, err := qrcode.NewQRCodeReader().Decode(bmp, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true})
		if err != nil {
			t.Fatalf("%s: %v", c.file, err)
		}
		for _, want := range c.want {
			if !strings.Contains(got.GetText(), want) {
				t.Errorf("the code of %s does not say %q: %q", c.file, want, got.GetText())
			}
		}
	}
}
