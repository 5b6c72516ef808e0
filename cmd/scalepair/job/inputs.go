package job

import "path/filepath"

// Inputs are the paths of what the job was read from: the build file, and its
// readings whether they are there or not. None for the embedded demo.
func (j *Job) Inputs() []string {
	if j.Demo() {
		return nil
	}
	readings := filepath.FromSlash(j.Build.Readings)
	if !filepath.IsAbs(readings) {
		readings = filepath.Join(filepath.Dir(j.Path), readings)
	}
	return []string{j.Path, readings}
}
