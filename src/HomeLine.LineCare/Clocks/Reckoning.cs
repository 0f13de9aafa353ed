using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>One computation: what it knows, and the windows, locks and decisions it has gathered so far.</summary>
internal sealed class Reckoning
{
    /// <summary>Room for the windows of most patients.</summary>
    private const int FewWindows = 12;

    /// <summary>Listing ordered dates as far ahead as asked, or as policy names.</summary>
    public Reckoning(PatientCare care, PolicyBook policy, Instant now, int? horizonDays)
    {
        Care = care;
        Policy = policy;
        Now = now;
        Days = CivilDays.Of(care.Zone);
        Today = Days.DayOf(now);
        (Morning, Midnight) = (Days.StartOf(Today), Days.StartOf(Today, 1));
        Numbers = policy.On(Today);
        Horizon = Today.PlusDays(horizonDays ?? Numbers.Horizon);
        Limits = new Limits(this);
    }

    public PatientCare Care { get; }

    public PolicyBook Policy { get; }

    public Instant Now { get; }

    public LocalDate Today { get; }

    /// <summary>First instant of today.</summary>
    public Instant Morning { get; }

    /// <summary>First instant after today.</summary>
    public Instant Midnight { get; }

    /// <summary>The civil days at the patient's home.</summary>
    public CivilDays Days { get; }

    /// <summary>The policy numbers of today.</summary>
    public DailyNumbers Numbers { get; }

    /// <summary>1 when the agency counts the day of change as day 1, else 0.</summary>
    public int FirstDay => Numbers.FirstDay;

    /// <summary>Last day for which ordered dates are listed, included.</summary>
    public LocalDate Horizon { get; }

    public Limits Limits { get; }

    public List<DueWindow> Windows { get; } = new(FewWindows);

    public List<LineLock> Locks { get; } = [];

    public List<Decision> Decisions { get; } = [];

    /// <summary>First instant of the day so many days on.</summary>
    public Instant StartOf(LocalDate day, int plus = 0) => Days.StartOf(day, plus);

    /// <summary>First instant after the day so many days on.</summary>
    public Instant EndOf(LocalDate day, int plus = 0) => Days.StartOf(day, plus + 1);

    public LocalDate DayOf(Instant at) => Days.DayOf(at);

    /// <summary>The last civil day on which something ending before <paramref name="lateFrom"/> can still be done.</summary>
    public LocalDate LastDayBefore(Instant lateFrom) => DayOf(lateFrom - Duration.Epsilon);

    /// <summary>A policy value in force today.</summary>
    public decimal Value(string ruleId) => Policy.ValueOf(ruleId, Today);

    /// <summary>Asks a licensed person once: a question with the same line, code and subject is not asked again.</summary>
    public void Ask(LineId? line, string code, string about, LocalDate? since, string sentence)
    {
        foreach (var asked in Decisions)
            if (asked.Line == line && asked.Code == code && asked.About == about) return;
        Decisions.Add(new Decision(Care.Patient, line, code, sentence) { About = about, Since = since });
    }

    /// <summary>As <see cref="Ask(LineId?, string, string, LocalDate?, string)"/>, about a ledger entry and since its day.</summary>
    public void Ask(LineId? line, string code, LineEvent about, string sentence) =>
        Ask(line, code, about.Id.Value, DayOf(about), sentence);

    /// <summary>Civil day of an entry: performed, or recorded when the date is unknown.</summary>
    public LocalDate DayOf(LineEvent entry) => entry.Performed?.Date ?? DayOf(entry.RecordedAt);

    /// <summary>The exact moment, or the one that makes the item late soonest when only the day is known.</summary>
    public Instant EarliestOf(CareMoment moment) => moment.At ?? StartOf(moment.Date);

    /// <summary>The exact moment, or the one that keeps the item closed longest when only the day is known.</summary>
    public Instant LatestOf(CareMoment moment) => moment.At ?? EndOf(moment.Date);
}
