package export

// BeforeEachStep has a function called before each change to an output folder.
func BeforeEachStep(f func()) { step = f }

// BeforeRename has a function called before a file gets its final name.
func BeforeRename(f func(name string)) { naming = f }
