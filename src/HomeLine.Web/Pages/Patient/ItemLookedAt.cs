using HomeLine.Agency.Absence;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.Web.Parts;
using NodaTime;

namespace HomeLine.Web.Pages.Patient;

/// <summary>One item on the way through a return, as typed.</summary>
public sealed class ItemLookedAt(Line line, CareItem item, string? lumen)
{
    public CareItem Item => item;

    public string Label => $"{line.InWords()} {line.Id}: {item.InWords()}{(lumen is null ? "" : $", lumen {lumen}")}";

    /// <summary>Empty when nobody can say.</summary>
    public DateTime? On { get; set; }

    public Certainty Certainty { get; set; } = Certainty.WrittenOnDressing;

    public DressingKind Dressing { get; set; } = DressingKind.Film;

    public ReconciledItem Entered() => new(
        line.Id, item, lumen, On is { } day ? LocalDate.FromDateTime(day) : null, Certainty, item == CareItem.Dressing ? Dressing : null);
}
