using System.Diagnostics.CodeAnalysis;
using HomeLine.Agency.Access;

namespace HomeLine.Web.Pages.FirstRun;

/// <summary>What is typed to make the first administrator. A field that was not sent is an empty one.</summary>
public sealed record FirstRunForm
{
    [AllowNull]
    public string Code { get; set => field = value ?? ""; } = "";

    [AllowNull]
    public string Name { get; set => field = value ?? ""; } = "";

    [AllowNull]
    public string UserName { get; set => field = value ?? ""; } = "";

    [AllowNull]
    public string Password { get; set => field = value ?? ""; } = "";

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
