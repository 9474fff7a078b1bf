package main

var sheetCommand = command{
	name: "sheet", args: "JOB... -o DIR",
	does: "make the setup sheet of each job, to send to another shop",
	more: `
The sheet stands alone. Its front has what the press needs: placement, press order, a row for each
screen, what to take instead of a blade or a mesh, and a table to send back with the first print.
Details, dryer, ink and the charts of the film follow.`,
	run: setupSheet,
}

func setupSheet(c *call) int {
	var out destination
	var d documents
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		out.declare(f)
		paperFlag(f, &d.paper)
		f.yes(&d.noCustomer, "no-customer", "leave the customer's name out")
		c.forceFlag(f)
		c.quietFlag(f)
	}); !ok {
		return code
	}
	return c.print(&out, sheetSuffix, d.sheet)
}

const sheetSuffix = "-sheet.pdf"
