package say

import (
	"fmt"
	"strings"

	"bladecard/calc/plan"
)

// mostCode is how many bytes a code on a card holds, so that its modules stay large enough for a phone.
const mostCode = 154

// ScreenCode is what the code on card and sheet says of a screen, short, a line each: job, place and head, color, mesh and
// stencil, blade and angle, strokes, air, flash and film. A job number and names that are too long for it are cut.
func (v *Voice) ScreenCode(p *plan.Plan, l plan.Location, s plan.Screen) string {
	name := p.Job
	if name == "" {
		name = p.Title
	}
	heads := make([]string, len(s.Heads))
	for i, h := range s.Heads {
		heads[i] = fmt.Sprint(h)
	}
	blade := s.Blade.Layup
	if s.Blade.LengthMM > 0 {
		blade += " " + v.Length(s.Blade.LengthMM)
	}
	unit, air, _ := v.Air(s)
	word, time, _ := v.FlashTile(s.Flash)
	lines := []string{
		strings.Join(heads, "+") + "/" + fmt.Sprintf("%d-%d", s.Number, s.Of),
		s.Mesh.Name + " EOM " + v.Fine(s.Stencil.EOMUM),
		blade + " " + v.Angle(s.AngleDeg.Set) + " (" + v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High) + ")",
		v.PullsWord(s.Strokes, s.Hits) + strings.TrimRight(", "+air+" "+unit, " "),
		strings.TrimSpace(word + " " + time),
		v.FilmUM(s.CuredUM.Value) + " (" + v.FilmRange(s.CuredUM.Low, s.CuredUM.High) + ")",
	}
	fixed := strings.Join(lines, "\n")
	room := mostCode - len(fixed) - 3 // line ends and a blank
	names := []string{cutBytes(name, room/2), cutBytes(l.Name, room/4), cutBytes(s.Color, room/4)}
	return strings.ReplaceAll(names[0]+" "+names[1]+"\n"+names[2]+"\n"+fixed, nbsp, " ")
}

// cutBytes is the beginning of a text of at most n bytes, whole letters.
func cutBytes(s string, n int) string {
	if len(s) <= n {
		return s
	}
	end := 0
	for i := range s {
		if i > max(0, n) {
			break
		}
		end = i
	}
	return s[:end]
}
