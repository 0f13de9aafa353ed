using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Exchange.Csv;

namespace HomeLine.Web.Pages.FirstRun;

/// <summary>The demonstration agency: the roster files that come with the program, read like anybody's.</summary>
public sealed class DemoAgency(OpenAgency opening)
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "seed");

    public async Task<Outcome<AgencyRoster>> OpenAsync(Actor actor, CancellationToken cancel)
    {
        if (!Directory.Exists(Folder))
            return new Refusal("no-demo", "The demonstration files did not come with this installation.", "Start empty, or install the program whole.");
        RosterReading reading = RosterFolder.Read(new RosterDirectory(Folder));
        return reading.Roster is { } roster
            ? await opening.OpenAsync(actor, roster, reading.Published, cancel)
            : new Refusal("demo-broken", $"The demonstration files have {reading.Problems.Length} problems.", "Start empty, or install the program anew.");
    }
}
