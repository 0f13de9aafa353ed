using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Scope;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Web.Pages.Patient;

/// <summary>An order as it is being typed. Texts stay texts until it is sent, so that nothing typed is lost to a slip.</summary>
public sealed class OrderFields
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    public OrderKind Kind { get; set; } = OrderKind.VisitFrequency;
    public DateTime? From { get; set; }
    public DateTime? To { get; set; }
    public string Practitioner { get; set; } = "";
    public string Text { get; set; } = "";
    public int? VisitsPerWeek { get; set; }
    public int? AsNeeded { get; set; }
    public string Signs { get; set; } = "";
    public CareItem Item { get; set; } = CareItem.Dressing;
    public int? EveryDays { get; set; }
    public string Line { get; set; } = "";
    public HashSet<IsoDayOfWeek> Weekdays { get; } = [];
    public string Dates { get; set; } = "";
    public TimeOnly? StartFrom { get; set; }
    public TimeOnly? StartTo { get; set; }
    public string DoseTimes { get; set; } = "";
    public int? Minutes { get; set; }
    public bool NeedsCourier { get; set; }
    public DateTime? DrugInHome { get; set; }

    /// <summary>The drug is still to be delivered, and nobody knows when it comes.</summary>
    public bool DeliveryNotKnown { get; set; }
    public bool IsFirstDose { get; set; }
    public bool AllergyHistory { get; set; }
    public DateTime? KitThrough { get; set; }
    public int? InfusingMinutes { get; set; }

    /// <summary>Care at the bedside on named days, rather than how often or at what interval.</summary>
    public bool IsAtTheBedside => Kind is not (OrderKind.VisitFrequency or OrderKind.Interval);

    /// <summary>Kinds of which a dose may be the first at home.</summary>
    public bool MayBeFirstDose => Kind is OrderKind.NurseDose or OrderKind.LongInfusion;

    /// <summary>What cannot be read, at its field; empty when everything can.</summary>
    public string Unread() =>
        IsAtTheBedside && Read(Dates, LocalDatePattern.Iso) is null ? "Days are written year-month-day, for example 2027-03-09 2027-03-11."
        : IsAtTheBedside && Read(DoseTimes, Clock) is null ? "Times are written with a colon, 24 hours, for example 9:30."
        : IsAtTheBedside && EveryDays is null && Weekdays.Count == 0 && Dates.Trim().Length == 0 ? "On which days? Give days, weekdays, or every so many days."
        : IsFirstDose && MayBeFirstDose && InfusingMinutes is not > 0 ? "How long does the drug run, in minutes?"
        : "";

    public CareOrder ToOrder(PatientId patient, LocalDate today)
    {
        bool visits = Kind == OrderKind.VisitFrequency, dose = IsFirstDose && MayBeFirstDose;
        var order = new CareOrder
        {
            Id = "",
            Patient = patient,
            Kind = Kind,
            StartsOn = Day(From) ?? today,
            EndsOn = Day(To),
            Practitioner = Practitioner.Trim(),
            Text = Text,
            VisitsPerWeek = visits ? VisitsPerWeek : null,
            AsNeededVisits = visits && AsNeeded is > 0 ? AsNeeded : null,
            Item = Kind == OrderKind.Interval ? Item : null,
            EveryDays = visits ? null : Kind == OrderKind.Interval ? EveryDays ?? 0 : EveryDays,
        };
        return !IsAtTheBedside ? order : order with
        {
            Line = Line.Length > 0 ? new LineId(Line) : null,
            Weekdays = [.. Weekdays.Order()],
            Dates = Read(Dates, LocalDatePattern.Iso) ?? [],
            StartFrom = StartFrom is { } from ? LocalTime.FromTimeOnly(from) : null,
            StartTo = StartTo is { } to ? LocalTime.FromTimeOnly(to) : null,
            DoseTimes = Kind == OrderKind.DrugLevel ? Read(DoseTimes, Clock) ?? [] : [],
            WorkMinutes = Minutes,
            NeedsCourier = NeedsCourier && Kind is OrderKind.Labs or OrderKind.DrugLevel,
            Skills = Kind switch { OrderKind.Labs or OrderKind.DrugLevel => ["LAB"], OrderKind.Removal => ["REM"], _ => [] },
            NotBefore = DrugInHome is { } there ? LocalDateTime.FromDateTime(there) : DeliveryNotKnown ? CareOrder.DeliveryNotKnown : null,
            FirstDose = dose ? new FirstDoseFacts(AllergyHistory, Day(KitThrough), InfusingMinutes ?? 0) : null,
        };
    }

    private static LocalDate? Day(DateTime? day) => day is { } one ? LocalDate.FromDateTime(one) : null;

    /// <summary>Every value of a text; nothing when one cannot be read.</summary>
    private static ImmutableArray<T>? Read<T>(string text, IPattern<T> pattern)
    {
        ParseResult<T>[] read = [.. text.Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries).Select(pattern.Parse)];
        return read.All(one => one.Success) ? [.. read.Select(one => one.Value)] : null;
    }
}
