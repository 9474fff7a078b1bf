package trials_test

import (
	"fmt"

	"bladecard/calc/fit"
	"bladecard/calc/trials"
)

func ExamplePlan() {
	plan, err := trials.Plan(rack(), fit.Expected(), trials.Usual(), 1)
	if err != nil {
		panic(err)
	}
	fmt.Printf("%d prints in %.0f min: films from %.0f %% under to %.0f %% over, then %.0f to %.0f\n", len(plan.Prints), plan.Minutes[0],
		plan.Before.UnderPercent, plan.Before.OverPercent, plan.After.UnderPercent, plan.After.OverPercent)
	// Output: 30 prints in 180 min: films from 32 % under to 48 % over, then 23 to 29
}

func ExampleUsual() {
	l := trials.Usual()
	fmt.Printf("%d day of %.0f min\n", l.Days, l.DayMinutes)
	// Output: 1 day of 180 min
}
