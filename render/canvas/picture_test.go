package canvas

import (
	"bytes"
	"image"
	"image/png"
	"strings"
	"testing"
)

func TestBadPictures(t *testing.T) {
	var file bytes.Buffer
	if err := png.Encode(&file, image.NewGray(image.Rect(0, 0, 20, 20))); err != nil {
		t.Fatal(err)
	}
	good := file.Bytes()
	huge := append([]byte(nil), good...)
	copy(huge[16:], []byte{0x7f, 0xff, 0xff, 0xff, 0x7f, 0xff, 0xff, 0xff}) // width and height of the header
	for name, data := range map[string][]byte{
		"nothing": nil, "text": []byte("not a picture"), "cut short": good[:len(good)/2], "absurd size": huge, "too large": make([]byte, MaxImageBytes+1),
	} {
		if _, err := ReadPicture(data); err == nil || !strings.Contains(err.Error(), "image") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
