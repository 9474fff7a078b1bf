package build

import (
	"cmp"

	"bladecard/cmd/bladecard/internal/disk"
)

// record is what an output folder keeps of a job: all that its outputs were made from, and the
// bytes that they have.
type record struct {
	disk.Record
	Number string `json:"number,omitempty"`
	Title  string `json:"title,omitempty"`
	Shop   string `json:"shop,omitempty"` // file, from the output folder; empty: the built-in shop
	From   string `json:"shop_from"`      // why it is that one: see plan.ShopOfFlag
	Logo   string `json:"logo,omitempty"`
	Log    string `json:"log,omitempty"`
	Made   inputs `json:"made_from"`
}

// inputs are all that the outputs of a job depend on, as sums of the bytes.
type inputs struct {
	Program string `json:"program"`
	Flags   string `json:"flags"`
	Job     string `json:"job"`
	Shop    string `json:"shop,omitempty"`
	Logo    string `json:"logo,omitempty"`
	Log     string `json:"log,omitempty"` // of what the press log tells of the job
}

// newRecord is the record of a job, still without its outputs.
func (w *worker) newRecord(r *result, made Made, src []byte) (*record, error) {
	now := &record{
		Number: made.Number, Title: made.Title, From: made.Shop.From,
		Made: inputs{Program: w.program, Flags: w.Settings, Job: disk.Sum(src), Shop: made.ShopSum},
	}
	job, err1 := w.fromOutputs(r.path)
	shop, err2 := w.fromOutputs(made.Shop.Path)
	logo, err3 := w.fromOutputs(made.Logo)
	log, err4 := w.fromOutputs(made.Log)
	if err := cmp.Or(err1, err2, err3, err4); err != nil {
		return nil, err
	}
	now.Record, now.Shop, now.Logo, now.Log = disk.NewRecord(job), shop, logo, log
	if made.Logo != "" {
		now.Made.Logo = w.sumOfFile(made.Logo, w.MaxImage)
	}
	if made.Log != "" {
		now.Made.Log = w.maker.LogSum(made.Log, made.Number, made.Title)
	}
	return now, nil
}

// fromOutputs is a path as seen from the output folder. An empty path stays empty.
func (b *build) fromOutputs(path string) (string, error) {
	if path == "" {
		return "", nil
	}
	return disk.From(b.Dir, path)
}

// sumOfFile is the sum of a shop's or a logo's bytes, read once a build; empty for what cannot be
// read.
func (b *build) sumOfFile(path string, most int64) string {
	if sum, known := b.sums.Load(path); known {
		return sum.(string)
	}
	sum := ""
	if data, err := disk.Read(path, most); err == nil {
		sum = disk.Sum(data)
	}
	b.sums.Store(path, sum)
	return sum
}
