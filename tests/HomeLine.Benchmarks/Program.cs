using System.CommandLine;
using System.CommandLine.Parsing;
using HomeLine.Benchmarks;

// One documented command for each measurement; docs/benchmarks.md says what they found.
var root = new RootCommand("HomeLine measured: speed of the clocks, quality and speed of the planner.");
foreach (Command command in EveryCommand.All())
    root.Add(command);
ParseResult parsed = root.Parse(args);
if (parsed.Errors.Count == 0)
    return parsed.Invoke();
foreach (ParseError error in parsed.Errors)
    Console.Error.WriteLine(error.Message);
return 2;
