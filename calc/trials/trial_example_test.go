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
	fmt.Printf("%d prints in %.0f min: the band goes from %.0f to %.0f %%\n", len(plan.Prints), plan.Minutes[0], 100*plan.Before, 100*plan.After)
	// Output: 30 prints in 180 min: the band goes from 39 to 26 %
}

func ExampleUsual() {
	l := trials.Usual()
	fmt.Printf("%d day of %.0f min\n", l.Days, l.DayMinutes)
	// Output: 1 day of 180 min
}
