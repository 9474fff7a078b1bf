package sure

import (
	"errors"
	"testing"
)

func TestTry(t *testing.T) {
	refused := errors.New("refused")
	var reached, after bool
	err := Try(func() {
		if Of(2, nil) != 2 {
			t.Error("a value without an error is lost")
		}
		if a, b := Both("a", 1, nil); a != "a" || b != 1 {
			t.Error("two values without an error are lost")
		}
		reached = true
		Of(0, refused)
		after = true
	})
	if !reached || after || err != refused {
		t.Errorf("reached the formula: %v, went on after it: %v, error %v", reached, after, err)
	}
	if err := Try(func() {}); err != nil {
		t.Error(err)
	}
}

func TestTryLetsOtherPanicsGo(t *testing.T) {
	defer func() {
		if recover() != "a bug" {
			t.Error("a panic that is no refusal is swallowed")
		}
	}()
	_ = Try(func() { panic("a bug") })
}
