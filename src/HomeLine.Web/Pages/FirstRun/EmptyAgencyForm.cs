using HomeLine.Agency.Roster;

namespace HomeLine.Web.Pages.FirstRun;

/// <summary>What is typed to start an agency without anybody in it.</summary>
public sealed record EmptyAgencyForm
{
    public string Name { get; set; } = "";
    public string Branch { get; set; } = "";
    public string ZoneId { get; set; } = "";

    /// <summary>The branch in the middle of an empty map; towns, rivers and speeds come with the first import. Speeds are our own default.</summary>
    public static AgencyMap BlankMap { get; } = new()
    {
        BranchPlace = new MapPoint(30, 22),
        Roads = new RoadFactors(1.3, [new SpeedBand(4, 30), new SpeedBand(15, 50), new SpeedBand(double.PositiveInfinity, 70)], 4),
    };

    public AgencyProfile Profile() => new() { Name = Name.Trim(), Branch = Branch.Trim(), ZoneId = ZoneId };
}
