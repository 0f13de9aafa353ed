using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Counting;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Quality;

/// <summary>Late care and infections of lines, recounted from the ledger each time it is asked.</summary>
public sealed class AskQuality(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Days looked at when none are named: four weeks, our own default.</summary>
    public const int UsualDays = 28;

    /// <summary>The longest span: two years and a day.</summary>
    private const int MostDays = 731;

    /// <summary>Late care listed at most; the counts above it are of all: our own default.</summary>
    private const int Listed = 200;

    /// <summary>Needs <see cref="AgencyAction.SeeQuality"/>. Refused for a span that ends before it begins, lies ahead, or is longer than two years.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="from">First day; empty for four weeks up to the last.</param>
    /// <param name="through">Last day; empty for yesterday.</param>
    /// <param name="cancel">Stops between two patients.</param>
    public async Task<Outcome<QualityView>> AskAsync(Actor actor, LocalDate? from, LocalDate? through, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeQuality) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        LocalDate last = through ?? agency.Today.PlusDays(-1), first = from ?? last.PlusDays(1 - UsualDays);
        if (last < first) return new Refusal("span-backwards", "The last day lies before the first.", "Exchange the two days.");
        if (first > agency.Today) return new Refusal("span-ahead", "These days have not come yet.", "Choose days up to today.");
        if (Period.DaysBetween(first, last) >= MostDays) return new Refusal("span-long", "That is more than two years.", "Choose a shorter time.");
        CaseReview[] reviews = await db.CaseReviews.AsNoTracking().ToArrayAsync(cancel);
        return await Task.Run<Outcome<QualityView>>(() => Count(agency, first, last, reviews, cancel), cancel);
    }

    private static QualityView Count(AgencyAtHand agency, LocalDate from, LocalDate through, CaseReview[] reviews, CancellationToken cancel)
    {
        var byEntry = reviews.ToLookup(r => r.Entry);
        var timed = new List<(Patient Patient, TimedCare Care)>();
        var cases = new List<CaseToReview>();
        int days = 0;
        foreach (Patient patient in agency.Roster.Patients)
        {
            cancel.ThrowIfCancellationRequested();
            PatientCare care = agency.Files[patient.Id];
            days += LineDays.Of(care, from, through, agency.Files.Policy, agency.Now).CentralLineDays;
            timed.AddRange(CareReplay.Of(care, from, through, agency.Files.Policy, agency.Now).Select(c => (patient, c)));
            cases.AddRange(CaseToReview.Of(patient, care, from, through, agency.Files.Policy, agency.Now, byEntry));
        }

        CaseReview[] counted = [.. byEntry.Select(g => g.OrderBy(r => r.ReviewedAt).Last()).Where(r => r.Counts && r.EventOn >= from && r.EventOn <= through)];
        double confidence = (double)agency.Files.Policy.ValueOf("quality.confidence", through);
        return new QualityView(
            from, through, agency.Today,
            [.. timed.GroupBy(t => t.Care.Item).OrderBy(g => g.Key).Select(g => Punctuality(g.Key, [.. g.Select(t => t.Care.Timing)]))],
            [
                .. timed.Where(t => t.Care.IsLate).OrderByDescending(t => t.Care.Window.LateFrom).Take(Listed)
                    .Select(t => new LateCare(t.Patient.Id, t.Patient.Name, t.Care.Item, t.Care.Window.LateFrom, t.Care.DoneAt, t.Care.Because)),
            ],
            days, counted.Length, days > 0 ? RateInterval.Of(counted.Length, days, confidence) : null,
            confidence, (int)agency.Files.Policy.ValueOf("quality.linedays.compare", through),
            [.. cases.OrderBy(c => c.Review is not null).ThenByDescending(c => c.On)],
            counted.OrderBy(r => r.ReviewedAt).LastOrDefault()?.Definition ?? "");
    }

    private static ItemPunctuality Punctuality(LineCare.Lines.CareItem item, CareTiming[] timings)
    {
        return new ItemPunctuality(
            item, How(CareTiming.InWindow), How(CareTiming.Early), How(CareTiming.Late), How(CareTiming.StillOpen) + How(CareTiming.WentBy), How(CareTiming.DateWasUnknown));

        int How(CareTiming timing) => timings.Count(t => t == timing);
    }
}
