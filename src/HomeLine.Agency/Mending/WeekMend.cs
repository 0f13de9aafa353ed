using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Mending;

/// <summary>
/// Mends the published week after something broke it: the planner's best repair, one that moves nobody who is not concerned, one that keeps every day, and
/// one that sends somebody else. What is as good as another or worse on every count is dropped, and at most three are left. Pure.
/// </summary>
internal sealed class WeekMend(MendSetting setting)
{
    /// <summary>Rounds of the search; fewer on a big week, so that the answers come while somebody waits on the phone. Our own default.</summary>
    private static int RoundsFor(int visits) => visits > 300 ? 40 : 200;

    /// <summary>What the troubles broke, and the answers to them.</summary>
    /// <exception cref="OperationCanceledException">It was stopped: what would have been found is not known.</exception>
    public MendOffer Of(ImmutableArray<Trouble> troubles)
    {
        setting.Cancel.ThrowIfCancellationRequested();
        WeekProblem problem = setting.Standing.Problem;
        // Care is not put into another visit here: a stored visit would lose what the other one was for.
        // Why care is left is said of the answers that are shown alone: it takes as long as the repair.
        var options = new MendOptions(Rounds: RoundsFor(setting.Standing.Plan.Visits.Length), Merges: false, Reasons: false);
        MendedWeek best = Planner.Mend(problem, troubles, options, setting.Cancel);
        setting.Cancel.ThrowIfCancellationRequested();
        ImmutableArray<string> broken = [.. best.Broken.Select(b => b.Visit.Id)];
        if (broken.IsEmpty) return new MendOffer();
        // A way that could only find the best repair again is not gone.
        var asked = new List<(WeekProblem Problem, ImmutableArray<Trouble> Troubles)> { (problem, troubles), (SomebodyElse(problem, best, broken), [.. troubles, .. Relieved(best)]) };
        if (MovesOthers(problem, best, broken)) asked.Add((OthersStay(problem, broken), troubles));
        if (MovesDays(problem, best, broken)) asked.Add((SameDay(problem, broken), troubles));
        var ways = new MendedWeek[asked.Count];
        ways[0] = best;
        Parallel.For(1, asked.Count, way => ways[way] = Planner.Mend(asked[way].Problem, asked[way].Troubles, options, setting.Cancel));
        setting.Cancel.ThrowIfCancellationRequested();
        var words = new MendWords(setting);
        ImmutableArray<FoundWay> found = [.. ways.Select((way, i) => new FoundWay(i, way.Score, words.Answer(way, broken)))];
        FoundWay[] kept = Ranked(found);
        Parallel.For(0, kept.Length, i =>
        {
            if (kept[i].Answer.Unmet.IsEmpty) return;
            (WeekProblem of, ImmutableArray<Trouble> after) = asked[kept[i].Way];
            kept[i] = kept[i] with { Answer = kept[i].Answer with { Unmet = words.Unmet(Planner.WithReasons(of, after, ways[kept[i].Way], setting.Cancel), kept[i].Answer.Changes) } };
        });
        setting.Cancel.ThrowIfCancellationRequested();
        ImmutableArray<MendAnswer> answers = [.. kept.Select(k => k.Answer)];
        return new MendOffer
        {
            CannotWait = [.. best.Broken.Select(b => words.Broken(b))],
            Answers = answers,
            RuledOut = [.. found.Select(f => f.Answer).Where(f => f.Unmet.IsEmpty && answers.All(a => !a.Price.IsSameAs(f.Price)))
                .Select(f => $"Also possible, but better in no way: {string.Join(" ", f.Changes.Select(c => c.Words))}")],
            PhoneChecks = PhoneChecks.Of(answers, setting),
        };
    }

    private static bool MovesOthers(WeekProblem problem, MendedWeek best, ImmutableArray<string> broken)
    {
        var after = best.Plan.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        return problem.Published!.Visits.Any(v => !broken.Contains(v.Id)
            && !(after.TryGetValue(v.Id, out PlannedVisit? then) && then.Start == v.Start && then.Nurse == v.Nurse && then.Second == v.Second));
    }

    private static bool MovesDays(WeekProblem problem, MendedWeek best, ImmutableArray<string> broken)
    {
        var after = best.Plan.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        return problem.Published!.Visits.Any(v => broken.Contains(v.Id)
            && after.TryGetValue(v.Id, out PlannedVisit? then) && then.Start / PlanCalendar.MinutesADay != v.Start / PlanCalendar.MinutesADay);
    }

    /// <summary>Only what is broken may move.</summary>
    private static WeekProblem OthersStay(WeekProblem problem, ImmutableArray<string> broken) => problem with
    {
        FrozenVisits = [.. problem.Published!.Visits.Select(v => v.Id).Where(id => !broken.Contains(id))],
    };

    /// <summary>What is broken is made on its day or not at all.</summary>
    private static WeekProblem SameDay(WeekProblem problem, ImmutableArray<string> broken)
    {
        var endOfDay = problem.Published!.Visits.Where(v => broken.Contains(v.Id))
            .SelectMany(v => v.Tasks.Select(task => (task, End: (Math.DivRem(v.Start, PlanCalendar.MinutesADay).Quotient + 1) * PlanCalendar.MinutesADay)))
            .ToDictionary(t => t.task, t => t.End, StringComparer.Ordinal);
        return problem with
        {
            Tasks = [.. problem.Tasks.Select(t => endOfDay.TryGetValue(t.Id, out int end) ? t with { HardLatest = Math.Min(t.HardLatest, end - 1) } : t)],
        };
    }

    /// <summary>Not the nurse the best repair sends: who is late or far may be spared, at the price of another name at the door.</summary>
    private static WeekProblem SomebodyElse(WeekProblem problem, MendedWeek best, ImmutableArray<string> broken)
    {
        ILookup<string, string> sent = best.Plan.Visits.Where(v => broken.Contains(v.Id)).ToLookup(v => v.Patient, v => v.Nurse, StringComparer.Ordinal);
        return problem with
        {
            Patients = [.. problem.Patients.Select(p => sent.Contains(p.Id) ? p with { RefusedNurses = [.. p.RefusedNurses, .. sent[p.Id].Distinct()] } : p)],
        };
    }

    /// <summary>Who would come late is relieved of just those visits.</summary>
    private static IEnumerable<Trouble> Relieved(MendedWeek best)
    {
        var after = best.Plan.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        return best.Broken.Select(b => b.Visit)
            .Where(v => after.TryGetValue(v.Id, out PlannedVisit? then) && then.Nurse == v.Nurse && then.Second is null)
            .Select(v => new Trouble.NurseOut(v.Nurse, v.Start, v.Start + 1));
    }

    private static FoundWay[] Ranked(ImmutableArray<FoundWay> found)
    {
        var kept = new List<FoundWay>();
        foreach (FoundWay way in found.OrderBy(w => w.Score))
        {
            if (kept.Any(k => k.Answer.Price.IsSameAs(way.Answer.Price) || way.Answer.Price.IsBeatenBy(k.Answer.Price))) continue;
            kept.RemoveAll(k => k.Answer.Price.IsBeatenBy(way.Answer.Price));
            kept.Add(way);
        }

        return [.. kept.Take(3).Select((way, i) => way with { Answer = way.Answer with { Key = ((char)('A' + i)).ToString() } })];
    }

    /// <summary>A repair as an answer.</summary>
    /// <param name="Way">Which of the ways asked for.</param>
    /// <param name="Score">How good it is.</param>
    /// <param name="Answer">In words.</param>
    private sealed record FoundWay(int Way, SameDayScore Score, MendAnswer Answer);
}
