package presslog

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
)

// Write writes a log: the header, then the rows, cells parted by semicolons so that either
// decimal sign may be filled in. A number that is not stated is an empty cell.
func Write(w io.Writer, rows []Row) error {
	out := csv.NewWriter(w)
	out.Comma = ';'
	var cells []string
	for _, c := range columns {
		cells = append(cells, c.title())
	}
	if err := out.Write(cells); err != nil {
		return err
	}
	num := func(v float64) string {
		if math.IsNaN(v) {
			return ""
		}
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	for _, r := range rows {
		if err := out.Write([]string{
			r.Date, r.Job, r.Location, r.Screen, r.Press, r.Mesh, num(r.EOMUM), num(r.FeatureMM), r.Ink, r.Blade, num(r.AngleDeg), num(r.LoadNCM),
			strconv.Itoa(r.Strokes), num(r.WetUM), num(r.CuredUM), num(r.BeforeG), num(r.AfterG), num(r.AreaCM2), num(r.DensityKgPerL), r.Note,
		}); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// Empty is a row of a setup in which nothing was measured yet.
func Empty() Row {
	nan := math.NaN()
	return Row{EOMUM: nan, FeatureMM: nan, AngleDeg: nan, LoadNCM: nan, Strokes: 1,
		WetUM: nan, CuredUM: nan, BeforeG: nan, AfterG: nan, AreaCM2: nan, DensityKgPerL: nan}
}
