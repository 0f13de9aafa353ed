using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using HomeLine.Agency.Visits;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.Kits;

/// <summary>What to bring to a visit, from what is done, what lies on the skin, allergies and age. Common practice, no source.</summary>
/// <param name="Things">What to bring, each once.</param>
/// <param name="Warnings">What must not be in the bag, and why.</param>
public sealed record KitList(ImmutableArray<string> Things, ImmutableArray<string> Warnings)
{
    private const string SmallTubesBelow = "kit.smalltubes.age";

    private static readonly JsonSerializerOptions Spelling = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    private static readonly ImmutableArray<KitRow> Rows = Read();

    /// <param name="items">The items, with the line and lumens of each.</param>
    /// <param name="care">The patient.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="on">Day of the visit.</param>
    public static KitList Of(IEnumerable<(CareItem Item, LineId? Line, int Lumens)> items, PatientCare care, PolicyBook policy, LocalDate on)
    {
        MaterialAnswer chlorhexidine = Materials.ChlorhexidineAllowed(care, policy, on);
        var things = new List<string>();
        foreach (var (item, lineId, lumens) in items)
        {
            Line? line = care.Lines.FirstOrDefault(l => l.Id == lineId);
            DressingKind covering = Covering(care, lineId);
            foreach (KitRow row in Rows.Where(r => r.Item == item && Holds(r.When, care, line, covering, chlorhexidine.Allowed, (int)policy.ValueOf(SmallTubesBelow, on), on)))
                things.Add(row.Each == "lumen" && lumens > 0 ? $"{row.Thing}: {lumens} + 1" : row.Thing);
        }

        return new KitList(
            [.. things.Distinct(StringComparer.Ordinal)],
            [
                .. !chlorhexidine.Allowed ? [$"Nothing with chlorhexidine in the bag. {chlorhexidine.Reason}"] : chlorhexidine.Ask ? [chlorhexidine.Reason] : Array.Empty<string>(),
                .. care.Risks.HasFlag(RiskFactors.AdhesiveInjury) ? ["Past skin injury from adhesive: remove slowly, use a barrier."] : Array.Empty<string>(),
            ]);
    }

    /// <summary>What to bring to a planned visit.</summary>
    public static KitList Of(WeekVisit visit, PatientCare care, PolicyBook policy) => Of(
        visit.Care.Select(c => ItemEntry.FromKey(c.Key, c.Label, true)).OfType<ItemEntry>().Select(i => (i.Item, i.Line, i.Lumens.Length)), care, policy, visit.Day);

    private static bool Holds(KitWhen when, PatientCare care, Line? line, DressingKind covering, bool chlorhexidine, int smallTubesBelow, LocalDate on) => when switch
    {
        KitWhen.Always => true,
        KitWhen.Chlorhexidine => chlorhexidine,
        KitWhen.NoChlorhexidine => !chlorhexidine,
        KitWhen.Film => covering is DressingKind.Film or DressingKind.AntisepticFilm or DressingKind.GauzeUnderFilm,
        KitWhen.Gauze => covering == DressingKind.Gauze,
        KitWhen.GauzeUnderFilm => covering == DressingKind.GauzeUnderFilm,
        KitWhen.Adhesive => line?.Securement == SecurementKind.Adhesive,
        KitWhen.AdhesiveInjury => care.Risks.HasFlag(RiskFactors.AdhesiveInjury),
        KitWhen.Infant => care.BornOn is { } born && born.PlusYears(smallTubesBelow) > on,
        _ => throw new ArgumentOutOfRangeException(nameof(when), when, "Unknown condition"),
    };

    private static DressingKind Covering(PatientCare care, LineId? line) =>
        care.Events.Where(e => e.Line == line && e.Dressing is not null && e.Performed is not null).MaxBy(e => e.Performed!.Value.Date)?.Dressing ?? DressingKind.Film;

    private static ImmutableArray<KitRow> Read()
    {
        using Stream file = typeof(KitList).Assembly.GetManifestResourceStream("HomeLine.Agency.Kits.kit.json")
            ?? throw new InvalidOperationException("The kit list did not come with the program.");
        return [.. JsonSerializer.Deserialize<KitRow[]>(file, Spelling) ?? []];
    }
}
