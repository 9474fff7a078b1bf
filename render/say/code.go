package say

import (
	"fmt"
	"strings"

	"bladecard/calc/plan"
)

// mostCode is how many bytes a code on a card holds, so that its modules stay large enough for a phone.
const mostCode = 178

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
	names := []string{name, l.Name, s.Color}
	const least = 6 // of each of the names behind the first
	for i := range names {
		room -= min(len(names[i]), least)
	}
	for i, n := range names {
		names[i] = cutBytes(n, min(len(n), least)+max(0, room))
		room -= len(names[i]) - min(len(n), least)
	}
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

// mostJobCode is how many bytes the code on a setup sheet holds.
const mostJobCode = 320

// JobCode is what the code on a setup sheet says of a job: number, title, and a short line a screen as far as it has
// room, then how many screens more there are.
func (v *Voice) JobCode(p *plan.Plan) string {
	out := cutBytes(strings.TrimSpace(p.Job+" "+p.Title), 80)
	screens := 0
	for _, l := range p.Locations {
		screens += len(l.Screens)
	}
	for i, l := range p.Locations {
		for _, s := range l.Screens {
			_, air, _ := v.Air(s)
			_, time, _ := v.FlashTile(s.Flash)
			pulls := strings.ReplaceAll(v.Pulls(s.Strokes, s.Hits), " ", "")
			line := fmt.Sprintf("\n%d/%d %s %s %s %s x %s %s", i+1, s.Number, s.Mesh.Name, s.Blade.Layup, v.Angle(s.AngleDeg.Set), pulls, air, time)
			line = strings.TrimRight(strings.ReplaceAll(line, nbsp, " "), " ")
			if len(out)+len(line) > mostJobCode-6 {
				return out + fmt.Sprintf("\n+ %d", screens)
			}
			out += line
			screens--
		}
	}
	return out
}
