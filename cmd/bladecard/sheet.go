package main

var sheetCommand = command{
	name: "sheet", args: "JOB... -o DIR",
	does: "make the setup sheet of each job, to send to another shop",
	more: `
The sheet stands alone: every screen with its figures, the press order, what must be held and
what may vary, the other blades and meshes that give the same film, ink, dryer and cautions.`,
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
