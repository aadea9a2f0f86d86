import { setFlagsFromString } from 'node:v8';

// The heap of a server, which runs for days beside an editor. To be imported before any program is read: machine code is kept for the
// flags that it was made under.

// What an edit leaves behind is small and short-lived. Left to itself, the heap for it grows: the process is then 12 MB
// larger with a small file open and 25 MB with one of 500 lines, for no gain in time.
setFlagsFromString('--semi-space-growth-factor=1');
// What was held of former letters is given up when it is half as much again as what is still held, where it would else grow to
// several times that: a third less memory with a long file or many open, for some more work beside the answers.
setFlagsFromString('--heap-growing-percent=50');
// The compiler between the quick one and the thorough one costs some 10 MB of code and gains nothing in short bursts.
setFlagsFromString('--no-maglev');
// The engine's own way to do with little, which older ones do not know and would complain of: 6 MB less with 50 lines and 25 MB with
// 5,000, for a tenth more work at a key in 5,000 lines and none that shows in 50.
if (Number.parseFloat(process.versions.v8) >= 13.6) setFlagsFromString('--memory-saver-mode');
