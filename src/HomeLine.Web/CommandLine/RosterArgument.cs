using HomeLine.Agency.Roster;
using HomeLine.Exchange.Csv;
using NodaTime;
using NodaTime.Text;
using NodaTime.TimeZones;

namespace HomeLine.Web.CommandLine;

/// <summary>Reads what the console commands are given; every fault goes to standard error, one line each.</summary>
internal static class RosterArgument
{
    private static readonly LocalDateTimePattern MinutePattern = LocalDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm");

    /// <summary>The roster of a folder, or nothing after saying why.</summary>
    public static RosterReading? Read(DirectoryInfo folder)
    {
        if (!folder.Exists)
        {
            Console.Error.WriteLine($"--roster: there is no folder {folder.FullName}");
            return null;
        }

        RosterReading reading = RosterFolder.Read(new RosterDirectory(folder.FullName));
        foreach (RowProblem problem in reading.Problems) Console.Error.WriteLine(problem);
        if (reading.Roster is null) Console.Error.WriteLine($"The roster was refused: {reading.Problems.Length} problems. Nothing was written.");
        return reading.Roster is null ? null : reading;
    }

    /// <summary>A moment at the branch, or nothing after saying why.</summary>
    public static Instant? Moment(string option, string text, AgencyProfile profile)
    {
        ParseResult<LocalDateTime> parsed = MinutePattern.Parse(text);
        if (!parsed.Success)
        {
            Console.Error.WriteLine($"{option}: '{text}' is not a local time like 2027-03-08T06:00");
            return null;
        }

        ZoneLocalMapping mapping = profile.Zone.MapLocal(parsed.Value);
        if (mapping.Count == 1) return mapping.Single().ToInstant();
        Console.Error.WriteLine(mapping.Count == 0
            ? $"{option}: {text} does not exist in {profile.ZoneId}: the clocks go forward then. Give a later time."
            : $"{option}: {text} happens twice in {profile.ZoneId}: the clocks go back then. Give an earlier or later time.");
        return null;
    }

    /// <summary>A date, or nothing after saying why.</summary>
    public static LocalDate? Date(string option, string text)
    {
        ParseResult<LocalDate> parsed = LocalDatePattern.Iso.Parse(text);
        if (parsed.Success) return parsed.Value;
        Console.Error.WriteLine($"{option}: '{text}' is not a date like 2027-03-08");
        return null;
    }

    /// <summary>Writes the file whole or not at all.</summary>
    public static int Write(FileInfo output, string text)
    {
        try
        {
            string half = output.FullName + ".part";
            File.WriteAllText(half, text);
            File.Move(half, output.FullName, overwrite: true);
            return ExitCodes.Done;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"--out: {output.FullName} cannot be written: {problem.Message}");
            return ExitCodes.BadInput;
        }
    }
}
