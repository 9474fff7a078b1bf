package main

import (
	"cmp"
	"io"

	"bladecard/calc/file"
)

var schemaCommand = command{
	name: "schema", args: "job|shop [-o FILE]",
	does: "print the JSON Schema of job or shop files, for editors",
	more: `
An editor of TOML that has the schema completes keys and words, shows what a key means, and marks
an unknown key or a missing unit while you type. Write it beside the file,

    bladecard schema job -o job.schema.json

and name it in the file's first line, which is a comment to everything else:

    #:schema ./job.schema.json

Or name it in the settings of the editor for all files of a folder. The draft is draft-07. Ranges
of quantities and names in the racks are beyond a schema: check finds those.`,
	run: printSchema,
}

func printSchema(c *call) int {
	var output string
	if code, ok := c.parse(func(f *flags) {
		c.langFlag(f)
		f.file(&output, "schema")
		c.forceFlag(f)
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if len(c.args) != 1 {
		return c.wrong("one kind of file is wanted: job or shop")
	}
	src, err := file.Schema(c.args[0], cmp.Or(c.lang, "en"))
	if err != nil {
		return c.wrong(err.Error())
	}
	return c.failed(c.put(c.writer(), output, func(w io.Writer) error {
		_, err := w.Write(src)
		return err
	}))
}
