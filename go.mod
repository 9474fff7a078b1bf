module bladecard

go 1.26.0

require (
	github.com/BurntSushi/toml v1.6.0 // indirect
	github.com/go-fonts/dejavu v0.3.2 // indirect
	github.com/go-pdf/fpdf v0.9.0 // indirect
	github.com/golang/freetype v0.0.0-20170609003504-e2365dfdc4a0 // indirect
	github.com/pelletier/go-toml/v2 v2.4.3 // indirect
	github.com/rogpeppe/go-internal v1.16.0 // indirect
	github.com/wcharczuk/go-chart/v2 v2.1.2 // indirect
	golang.org/x/image v0.25.0 // indirect
	golang.org/x/text v0.44.0 // indirect
	gonum.org/v1/gonum v0.17.0 // indirect
	pgregory.net/rapid v1.3.0 // indirect
)
