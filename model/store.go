package model

// Once holds a figure that is computed once, when it is first needed.
type Once[T any] struct {
	done  bool
	value T
	err   error
}

// Get returns the figure, and computes it the first time.
func (o *Once[T]) Get(compute func() (T, error)) (T, error) {
	if !o.done {
		o.value, o.err = compute()
		o.done = true
	}
	return o.value, o.err
}

// OnceAt returns the figure for one key of several, and computes it the first
// time.
func OnceAt[K comparable, T any](at *map[K]*Once[T], key K, compute func() (T, error)) (T, error) {
	if *at == nil {
		*at = map[K]*Once[T]{}
	}
	o := (*at)[key]
	if o == nil {
		o = &Once[T]{}
		(*at)[key] = o
	}
	return o.Get(compute)
}

// Store holds what has been computed about a thing, so that no figure is
// computed twice. Each package that computes figures has a type of its own in
// it, so the thing need not know who measures it. The zero value is empty.
type Store struct{ figures []any }

// In returns the figures of type T in a store: empty ones the first time.
func In[T any](s *Store) *T {
	for _, f := range s.figures { // a thing is measured by a few packages at most
		if f, ok := f.(*T); ok {
			return f
		}
	}
	f := new(T)
	s.figures = append(s.figures, f)
	return f
}
