using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using HomeLine.Agency.Visits;
using HomeLine.Web.Parts;
using NodaTime;

namespace HomeLine.Web.Pages.Visits;

/// <summary>What a page tells the device about the day it may keep: whose, until when, which pages, and under which key (docs/decisions/0015).</summary>
/// <param name="Day">The day at the branch, ISO.</param>
/// <param name="Owner">Whose, as a print of the account.</param>
/// <param name="Key">The day's key in the clear, for the open page.</param>
/// <param name="Seal">The same under the office's seal, for the device.</param>
/// <param name="Version">Changes when visits come, go or are recorded.</param>
/// <param name="Ends">Milliseconds until the day ends at the branch.</param>
/// <param name="Pages">Addresses of the forms, without anybody's name.</param>
/// <param name="Numbers">Whom to call; shown also when nothing can be opened.</param>
public sealed record DayKept(string Day, string Owner, string Key, string Seal, string Version, long Ends, ImmutableArray<string> Pages, ImmutableArray<NumberToCall> Numbers)
{
    private const int PrintLetters = 16;

    /// <summary>The day as its page writes it down.</summary>
    public static DayKept Of(MyDay day, string person, DraftKey key) => new(
        day.Day.Iso(),
        OwnerOf(person),
        key.Key,
        key.Seal,
        Print(string.Join('|', day.Stops.Select(s => $"{s.Visit.Id} {s.Visit.Start} {string.Join(',', s.Recorded)}").Prepend(day.PlanVersion.ToString(CultureInfo.InvariantCulture)))),
        NodaConstants.MillisecondsPerDay - (day.Now.TimeOfDay.TickOfDay / NodaConstants.TicksPerMillisecond),
        [.. day.Stops.Where(s => s.Recorded.IsEmpty).Select(s => $"/visits/{Uri.EscapeDataString(s.Visit.Id)}/record")],
        [
            new NumberToCall($"Call the coordinator, {day.CoordinatorPhone}", $"tel:{day.CoordinatorPhone}"),
            new NumberToCall($"Call the clinical manager or on call, {day.OnCallPhone}", $"tel:{day.OnCallPhone}"),
            new NumberToCall($"Emergency, {day.EmergencyNumber}", $"tel:{day.EmergencyNumber}"),
        ]);

    /// <summary>A print of an account, the same on every page and of no use elsewhere.</summary>
    public static string OwnerOf(string person) => Print("owner " + person);

    /// <summary>For the page's attribute.</summary>
    public string Json() => JsonSerializer.Serialize(this, JsonSerializerOptions.Web);

    private static string Print(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..PrintLetters];
}

/// <summary>A number with its words and its link.</summary>
public sealed record NumberToCall(string Words, string Address);
