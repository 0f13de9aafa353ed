using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Visits;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using Microsoft.Extensions.Primitives;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Web.Pages.Visits;

/// <summary>
/// Reads a posted visit. Every field is named after what it belongs to, never after its place on the page, so that a form that waited a day in a
/// basement still fits the plan of today. What cannot be read is a fault at its field.
/// </summary>
public sealed class VisitForm(IFormCollection form)
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalTimePattern ClockWithSeconds = LocalTimePattern.CreateWithInvariantCulture("HH:mm:ss");
    private readonly List<VisitFault> faults = [];

    /// <summary>What could not be read.</summary>
    public ImmutableArray<VisitFault> Faults => [.. faults];

    /// <summary>Which button was pressed: <c>check</c> or <c>sign</c>.</summary>
    public string Do => Text("do");

    /// <summary>Nobody looks at the answer: the device sends what waited while there was no signal.</summary>
    public bool IsUnseen => Text("unseen") is "yes";

    public VisitEntry Read(PatientId patient, string? visit) => new()
    {
        Submission = Text("submission"),
        Patient = patient,
        Visit = visit,
        UnplannedBecause = Text("unplanned"),
        Day = Day(),
        Arrived = Time("arrived", "arrived"),
        Left = Time("left", "left"),
        Elsewhere = Text("elsewhere"),
        SignsAsked = Text("signs") is "none" || (Text("signs") is "some" && form["sign"].Count > 0),
        Signs = Text("signs") is "some" ? [.. form["sign"].OfType<string>()] : [],
        Items = [.. form["item"].OfType<string>().Select(Item).OfType<ItemEntry>()],
        Lines = [.. form["line"].OfType<string>().Select(Line)],
        Draws = [.. form["draw"].OfType<string>().Where(order => form["item"].OfType<string>().Any(key => key.EndsWith("|" + order, StringComparison.Ordinal) && Text($"item:{key}") == "done")).Select(Draw)],
        Teaching = [.. Enumerable.Range(0, TeachRows).Select(Teach).OfType<TeachBack>()],
        FirstDose = Text("fd") is "asked" ? new FirstDoseEntry(On("fd:history"), Date("fd:kit", "fd"), On("fd:drug"), (int?)Number("fd:minutes", "fd")) : null,
        Told = Text("told:who").Length > 0 || Text("told:said").Length > 0 ? new PractitionerTold(Text("told:who"), Time("told:at", "told"), Text("told:said")) : null,
        AllergyTold = Text("allergy"),
        Incident = Word<Incident>("incident") ?? Incident.None,
        IncidentText = Text("incident-text"),
        Note = Text("note"),
        AmendedBecause = Text("amended-because"),
        DeviceNow = long.TryParse(Text("device-now"), NumberStyles.None, CultureInfo.InvariantCulture, out long milliseconds) ? Instant.FromUnixTimeMilliseconds(milliseconds) : null,
        Answers = form.Keys.Where(key => key.StartsWith("answer:", StringComparison.Ordinal)).ToImmutableDictionary(key => key["answer:".Length..], Text),
    };

    private LocalDate Day()
    {
        if (Date("day", "arrived") is { } day && day > Earliest) return day;
        if (faults.Count == 0) faults.Add(new VisitFault("arrived", VisitCodes.ArrivalMissing, "On which day was the visit?"));
        return Earliest;
    }

    /// <summary>Before this no day of a visit is believed.</summary>
    private static readonly LocalDate Earliest = new(2000, 1, 1);

    /// <summary>Rows of the teaching table.</summary>
    public const int TeachRows = 2;

    private ItemEntry? Item(string key) => ItemEntry.FromKey(key, Text($"item:{key}:label"), Text($"item:{key}:planned") == "yes") is not { } item ? null : item with
    {
        Standing = Text($"item:{key}") switch { "done" => ItemStanding.Done, "notdone" => ItemStanding.NotDone, _ => ItemStanding.Unsaid },
        At = Time($"item:{key}:at", $"item {key}"),
        Why = Word<NotDoneReason>($"item:{key}:why"),
        WhyText = Text($"item:{key}:text"),
        DoneBy = Text($"item:{key}:by"),
        Dressing = Word<DressingKind>($"item:{key}:dressing"),
        SecurementChanged = On($"item:{key}:securement"),
    };

    private LineEntry Line(string id) => new()
    {
        Line = new LineId(id),
        Looked = Text($"line:{id}:looked") is "none" || (Text($"line:{id}:looked") is "some" && (form[$"line:{id}:found"].Count > 0 || Text($"line:{id}:text").Length > 0)),
        Found = Text($"line:{id}:looked") is "some" ? Flags<SiteFinding>($"line:{id}:found").Aggregate(SiteFinding.None, (all, one) => all | one) : SiteFinding.None,
        FoundText = Text($"line:{id}:text"),
        AsFound = Flags<SealFinding>($"line:{id}:seal").Aggregate(SealFinding.None, (all, one) => all | one),
        Reinforced = On($"line:{id}:reinforced"),
        NeedleOut = On($"line:{id}:needleout"),
        OutsideLength = Number($"line:{id}:length", $"line {id}"),
        InInches = Text($"line:{id}:unit") == "in",
        ArmGirthCm = Number($"line:{id}:girth", $"line {id}"),
        RemovedLengthCm = Number($"line:{id}:removed", $"line {id}"),
        Lumens =
        [
            .. form[$"lumen:{id}"].OfType<string>().Select(label => new LumenEntry(
                label, On($"lumen:{id}:{label}:flushed"), Word<BloodReturn>($"lumen:{id}:{label}:return") ?? BloodReturn.NotChecked, On($"lumen:{id}:{label}:stuck"))),
        ],
    };

    private DrawEntry Draw(string order)
    {
        string[] from = Text($"draw:{order}:from").Split('/');
        LocalDate? day = Date($"draw:{order}:lastday", $"draw {order}");
        LocalTime? time = Time($"draw:{order}:lasttime", $"draw {order}");
        return new DrawEntry
        {
            Order = order,
            Line = from.Length == 2 ? new LineId(from[0]) : null,
            Lumen = from.Length == 2 ? from[1] : null,
            DrawnAt = Time($"draw:{order}:at", $"draw {order}"),
            LastDose = day is { } on && time is { } at ? on.At(at) : null,
            Tubes = Text($"draw:{order}:tubes"),
            Dropped = Text($"draw:{order}:dropped"),
            DroppedAt = Time($"draw:{order}:droppedat", $"draw {order}"),
        };
    }

    private TeachBack? Teach(int row) => Word<CareItem>($"teach:{row}:item") is { } item && Word<TeachLevel>($"teach:{row}:level") is { } level
        ? new TeachBack(Text($"teach:{row}:person"), item, Text($"teach:{row}:line") is { Length: > 0 } line ? new LineId(line) : null, level, On($"teach:{row}:validate"))
        : null;

    private string Text(string name) => form.TryGetValue(name, out StringValues value) ? value.ToString().Trim() : "";

    private bool On(string name) => Text(name) is "on";

    private T? Word<T>(string name)
        where T : struct, Enum => Enum.TryParse(Text(name), out T value) && Enum.IsDefined(value) ? value : null;

    private IEnumerable<T> Flags<T>(string name)
        where T : struct, Enum => form[name].OfType<string>().Select(text => Enum.TryParse(text, out T value) && Enum.IsDefined(value) ? (T?)value : null).OfType<T>();

    private LocalTime? Time(string name, string field)
    {
        string text = Text(name);
        if (text.Length == 0) return null;
        if (Clock.Parse(text).TryGetValue(default, out LocalTime time) || ClockWithSeconds.Parse(text).TryGetValue(default, out time)) return time;
        faults.Add(new VisitFault(field, "time-unreadable", $"“{text}” is no time of day like 14:05."));
        return null;
    }

    private LocalDate? Date(string name, string field)
    {
        string text = Text(name);
        if (text.Length == 0) return null;
        if (LocalDatePattern.Iso.Parse(text).TryGetValue(default, out LocalDate day)) return day;
        faults.Add(new VisitFault(field, "date-unreadable", $"“{text}” is no date like 2027-03-08."));
        return null;
    }

    private decimal? Number(string name, string field)
    {
        string text = Text(name).Replace(',', '.');
        if (text.Length == 0) return null;
        if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out decimal number) && Math.Abs(number) < 10_000) return number;
        faults.Add(new VisitFault(field, "number-unreadable", $"“{text}” is no number like 4.5."));
        return null;
    }
}
