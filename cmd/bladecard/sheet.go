package main

var sheetCommand = command{
	name: "sheet", args: "JOB... -o DIR",
	run: setupSheet,
}

func setupSheet(c *call) int {
	var out destination
	var d documents
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		out.declare(f)
		paperFlag(f, &d.paper)
		f.yes(&d.noCustomer, "no-customer")
		c.writeFlags(f)
	}); !ok {
		return code
	}
	return c.print(&out, sheetSuffix, d.sheet)
}

const sheetSuffix = "-sheet.pdf"
