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

// TestCodeOnPaper: the code on the back of a printed card, at the size of the paper, is read by another library and
// says job, place, mesh, blade, angle, strokes, flash and film.
func TestCodeOnPaper(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm is not on this machine")
	}
	dir := t.TempDir()
	var out, errs bytes.Buffer
	if code := run([]string{"cards", "../../samples/jobs/lantern-crew.toml", "--single", "--lang", "en", "-o", dir}, nil, &out, &errs); code != exitDone {
		t.Fatalf("exit code %d: %s", code, &errs)
	}
	page, err := exec.Command("pdftoppm", "-r", "300", "-gray", "-png", "-f", "2", "-l", "2", filepath.Join(dir, "lantern-crew-cards.pdf")).Output()
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
		t.Fatal(err)
	}
	for _, want := range []string{"L-031 full back", "white base", "1/1-3", "150-48 EOM 13 µm", "70 360 mm 15° (10–25°)", "2 strokes, 1.1 bar", "FLASH 2.4 s", "40 µm (27–61 µm)"} {
		if !strings.Contains(got.GetText(), want) {
			t.Errorf("the code does not say %q: %q", want, got.GetText())
		}
	}
}
