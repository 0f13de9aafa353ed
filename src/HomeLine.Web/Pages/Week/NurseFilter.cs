using System.Collections.Immutable;
using Microsoft.AspNetCore.WebUtilities;

namespace HomeLine.Web.Pages.Week;

/// <summary>Which nurses a week page shows. It stands in the address, so that it can be kept and sent.</summary>
/// <param name="Nurse">Part of a name, or an identifier; empty for everybody.</param>
/// <param name="Area">A town; empty for all.</param>
public sealed record NurseFilter(string Nurse, string Area)
{
    public static NurseFilter Of(string? nurse, string? area) => new(nurse?.Trim() ?? "", area?.Trim() ?? "");

    public bool IsOff => Nurse.Length == 0 && Area.Length == 0;

    /// <summary>Whether a nurse is shown: by identifier or part of the name, and by a town she lives near or visits.</summary>
    public bool Shows(string id, string name, ImmutableArray<string> areas) =>
        (Nurse.Length == 0 || id.Equals(Nurse, StringComparison.OrdinalIgnoreCase) || (!IsId && name.Contains(Nurse, StringComparison.CurrentCultureIgnoreCase)))
        && (Area.Length == 0 || areas.Contains(Area, StringComparer.OrdinalIgnoreCase));

    /// <summary>An address with this filter in it.</summary>
    public string In(string address)
    {
        if (Nurse.Length > 0) address = QueryHelpers.AddQueryString(address, "nurse", Nurse);
        return Area.Length > 0 ? QueryHelpers.AddQueryString(address, "area", Area) : address;
    }

    /// <summary>An identifier such as <c>N7</c> means that nurse, not all whose name holds an N and a 7.</summary>
    private bool IsId => Nurse.Length > 1 && char.IsAsciiLetter(Nurse[0]) && Nurse.AsSpan(1).IndexOfAnyExceptInRange('0', '9') < 0;
}
