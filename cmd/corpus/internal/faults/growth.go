package faults

// Growth says how a fault is grown from hardly anything to far too much.
type Growth struct {
	// Limit is as far off as a garment in order may be: at 0.8 times of it nothing
	// is found. In millimetres, or what the fault is measured in.
	Limit float64
	// Most is how many times the limit it is grown to: 20, or less where the fault
	// is periodic or nothing is left of the thing.
	Most float64
	Why  string // why it is not grown to 20 times
	// Sharp is a fault of which nothing at all is in order, as an allowance on a fold.
	Sharp bool
}

const periodic = "it is periodic: "

// growths are the faults that grow, by name. The others are there or not: a notch of
// another kind, a swapped dart.
var growths = map[string]Growth{
	"a shared edge bent on one layer":                                {Limit: 1, Most: 20},
	"the end of a shared edge turned on one layer":                   {Limit: 2, Most: 20},
	"a shared edge longer on one layer":                              {Limit: 1, Most: 20},
	"a notch on a shared edge moved on one layer":                    {Limit: 1, Most: 20},
	"an inner point out by 2 mm":                                     {Limit: 0.5, Most: 20},
	"an inner point out between the levels":                          {Limit: 0.5, Most: 20, Sharp: true},
	"an inner point out below the last level":                        {Limit: 0.5, Most: 20},
	"an inner piece too narrow":                                      {Limit: 0.5, Most: 20},
	"a dart let out on the inner layer alone":                        {Limit: 0.5, Most: 20},
	"a dart moved sideways on one layer":                             {Limit: 3, Most: 20},
	"a dart shortened on one layer":                                  {Limit: 6, Most: 9, Why: "no dart is left"},
	"a dart too deep on the outer layer":                             {Limit: 1, Most: 20, Sharp: true},
	"a dart let out on the outer layer alone":                        {Limit: 10, Most: 2, Why: "no dart is left"},
	"a lining that hangs too low":                                    {Limit: 1, Most: 20, Sharp: true},
	"a lining that shrinks":                                          {Limit: 0.5, Most: 20},
	"a layer with no room to go round the inner":                     {Limit: 1.2, Most: 20},
	"a seam side longer":                                             {Limit: 1.6, Most: 20},
	"a hem that does not run on over the side seam":                  {Limit: 3, Most: 20},
	"a bowed fold":                                                   {Limit: 0.5, Most: 20},
	"a hem not square to the fold":                                   {Limit: 1, Most: 20},
	"an inner point out by 8 mm, in pieces with levels of their own": {Limit: 0.5, Most: 20},
	"a hem 20 mm wider than the hem beside it":                       {Limit: 0.5, Most: 20},
	"the front notch of a sleeve moved 30 mm":                        {Limit: 1.5, Most: 20},
	"a cap too short":                                                {Limit: 3.6, Most: 20},
	"the tip of a dart moved":                                        {Limit: 1, Most: 20, Sharp: true},
	"ease on the wrong side":                                         {Limit: 0.5, Most: 20},
	"a grain line turned":                                            {Limit: 3, Most: 20},
	"a notch moved 3 mm":                                             {Limit: 1.5, Most: 8, Why: periodic + "past its neighbour it is the neighbour's"},
	"a notch off its line":                                           {Limit: 0.5, Most: 20},
	"a notch cut too deep":                                           {Limit: 1, Most: 20},
	"a notch too near a corner":                                      {Limit: 1, Most: 12, Sharp: true, Why: "it is at the corner"},
	"an allowance off by 2 mm on one side of a seam":                 {Limit: 0.5, Most: 20},
	"an allowance off on one layer of a shared edge":                 {Limit: 0.5, Most: 20},
	"a casing's allowance off by 2 mm":                               {Limit: 0.5, Most: 20},
	"a closure that needs more allowance":                            {Limit: 0.5, Most: 20},
	"an allowance on a fold":                                         {Limit: 0.5, Most: 20, Sharp: true},
	"a cut line drawn too far out":                                   {Limit: 0.5, Most: 20},
	"one edge of a closure longer":                                   {Limit: 0.8, Most: 20},
	"two halves of a tape out of step":                               {Limit: 0.01, Most: 20},
	"a button out of its row":                                        {Limit: 1.5, Most: 8, Why: periodic + "past its neighbour it is the neighbour's"},
	"too little past the buttons":                                    {Limit: 1, Most: 11, Sharp: true, Why: "nothing is left past them"},
	"an ease out of its range":                                       {Limit: 0.5, Most: 20, Sharp: true},
	"a closure that laps over too far":                               {Limit: 3.5, Most: 20},
	"a crotch too long":                                              {Limit: 9, Most: 20},
	"an elastic too short":                                           {Limit: 0.5, Most: 18, Why: "no elastic is left"},
	"a bone as long as its channel":                                  {Limit: 1, Most: 20, Sharp: true},
	"measures of two bodies":                                         {Limit: 30, Most: 15, Why: "no measure is left"},
	"an outline with a gap":                                          {Limit: 0.1, Most: 20},
	"an outline with a gap of 4 mm":                                  {Limit: 0.1, Most: 20},
	"an edge that lies 4 mm off at both its ends":                    {Limit: 0.1, Most: 20},
	"a size whose grade slips":                                       {Limit: 5, Most: 20},
	"an alteration that the other side lacks":                        {Limit: 0.5, Most: 20, Sharp: true},
	"an alteration that misses one edge":                             {Limit: 0.5, Most: 20, Sharp: true},
	"an alteration of one layer alone":                               {Limit: 0.5, Most: 20, Sharp: true},
}

// Growth says how a fault is grown, and whether it can be.
func (f Fault) Growth() (Growth, bool) {
	g, ok := growths[f.Name]
	return g, ok
}
