using HomeLine.Agency.Access;

namespace HomeLine.Web.Pages.FirstRun;

/// <summary>What is typed to make the first administrator.</summary>
public sealed record FirstRunForm
{
    public string Code { get; set; } = "";
    public string Name { get; set; } = "";
    public string UserName { get; set; } = "";
    public string Password { get; set; } = "";

    /// <summary>In a small agency the same person also plans the week.</summary>
    public bool Coordinates { get; set; }

    /// <summary>A licensed person who decides red flags, orders and exceptions.</summary>
    public bool Decides { get; set; }

    public IEnumerable<AgencyRole> FurtherRoles()
    {
        if (Coordinates) yield return AgencyRole.Coordinator;
        if (Decides) yield return AgencyRole.ClinicalManager;
    }
}
