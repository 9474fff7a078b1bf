package main

import (
	"cmp"
	"io"

	"bladecard/calc/file"
)

var schemaCommand = command{
	name: "schema", args: "job|shop [-o FILE]",
	run: printSchema,
}

func printSchema(c *call) int {
	var output string
	if code, ok := c.parse(func(f *flags) {
		c.langFlag(f)
		f.file(&output)
		c.writeFlags(f)
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
