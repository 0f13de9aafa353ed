using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Json;

namespace HomeLine.Web.CommandLine;

/// <summary>The <c>due</c> command: the windows alone.</summary>
internal static class DueCommand
{
    public static int Run(DirectoryInfo folder, string at, FileInfo output)
    {
        if (RosterArgument.Read(folder) is not { Roster: { } roster }) return ExitCodes.BadInput;
        if (RosterArgument.Moment("--at", at, roster.Profile) is not { } now) return ExitCodes.BadInput;
        return RosterArgument.Write(output, DueFile.Of(roster, CareFiles.Of(roster), now).ToJson());
    }
}
