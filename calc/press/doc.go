// Package press lays out the screens of a location on a press: which stations they take with
// the flashes and cool-downs between them, which of them print on wet ink, whether a press has
// the heads, and where the order departs from what is customary.
//
// The order of the job is kept; nothing here sorts. Screens are counted from 0. Coverage and
// lightness are shares from 0 to 1.
//
// Rules, all common practice but where it says otherwise: an underbase and a blocker are flashed
// and cooled before the next screen prints on them, and so is whatever is printed, flashed and
// printed again; the flash takes it to the gel and not to the cure (published); the last print
// goes to the dryer without a flash. Stations are colors + flashes + cool-downs, 6 + 1 + 1 = 8
// (published: two trade glossaries, indigoclothing.com and phoenixscreenprinting.com [47]).
package press
