using System.CommandLine;
using System.Globalization;
using System.Text.RegularExpressions;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Judges the solutions published beside a set's instances with the checker that judges ours, and compares with the value the set states.</summary>
internal static class VerifyCommand
{
    /// <summary>Own value: a difference that comes from printed digits.</summary>
    private const double Digits = 0.01;

    public static Command Create()
    {
        var folder = new Argument<string>("folder") { Description = "Folder with the instance files, their solutions and their bks.csv." };
        var format = new Option<string?>("--format") { Description = "Layout of the files; guessed when omitted." };
        var only = new Option<string?>("--only") { Description = "Regular expression the file's name must match." };
        var command = new Command("verify", "Judge the solutions published with a set by the checker that judges ours.") { folder, format, only };
        command.SetAction(parsed =>
        {
            try
            {
                return Run(parsed.GetValue(folder)!, parsed.GetValue(format), new Regex(parsed.GetValue(only) ?? "", RegexOptions.None, TimeSpan.FromSeconds(1)), Console.Out);
            }
            catch (Exception fault) when (fault is UnreadableFileException or IOException or RegexParseException)
            {
                Console.Error.WriteLine(fault.Message);
                return 2;
            }
        });
        return command;
    }

    private static int Run(string folder, string? format, Regex only, TextWriter output)
    {
        BestKnown known = BestKnown.Of(folder);
        int same = 0, other = 0, none = 0;
        foreach (string path in InstanceFiles.Of(folder).Where(path => only.IsMatch(Path.GetFileNameWithoutExtension(path))))
        {
            Instance instance = AnyFile.Open(path, format, null);
            if (instance.Published(path) is not { } verdict)
            {
                none++;
                continue;
            }

            double? value = known.Value(instance.Name, instance.Conventions[0]);
            bool agrees = verdict.Faults.Count == 0 && Math.Abs(verdict.Cost - (value ?? double.NaN)) <= Digits;
            (same, other) = agrees ? (same + 1, other) : (same, other + 1);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{instance.Name}: {verdict.Cost:0.####}, stated {value}{(agrees ? "" : " DIFFERENT")}{(verdict.Faults.Count > 0 ? " NOT VALID: " + verdict.Faults[0] : "")}"));
        }

        output.WriteLine($"{same} as stated, {other} not, {none} without a solution that is read here");
        return other == 0 ? 0 : 1;
    }
}
