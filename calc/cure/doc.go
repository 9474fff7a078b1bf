// Package cure works out heat: how long a flash unit needs to gel a film, what it takes to
// drive the water off, how fast the belt of a dryer runs, and what a fibre bears.
//
// Sources: Incropera and DeWitt [39], Fundamentals of Heat and Mass Transfer, ch. 5, and Holman, Heat
// Transfer, 5th ed. [40], ch. 4, for transient conduction (textbook examples in the tests); trade
// articles for gel and cure temperatures and for what polyester bears, named at each figure.
// Material properties are partly published and partly from memory, as marked in stack.go; the
// flux of a flash unit is a calibration on published flash times, not a validation.
//
// A flash time is a place to start, never one exact second: print it with FlashRange.
package cure
