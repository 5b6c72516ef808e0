package main

import "scalepair/cmd/scalepair/whole"

// newFile is a file that a command is to write.
type newFile = whole.File

// writeFiles writes all files whole, or none at all. Without force none may
// exist yet; every one that does is named. With force too, nothing is written
// over what this run has read.
func (a *app) writeFiles(files []newFile, force bool) error {
	return a.carryOut(whole.Order{Files: files, Force: force})
}

// carryOut writes what is ordered, or nothing. What ends the program from
// outside meanwhile does so in good order.
func (a *app) carryOut(o whole.Order) error {
	i := catchInterrupts()
	o.Inputs, o.Stopped = a.inputs, func() error { return i.stopped("nothing was written") }
	err := o.Write()
	i.end()
	if err == nil {
		err = i.stopped("everything was written by then")
	}
	return err
}
