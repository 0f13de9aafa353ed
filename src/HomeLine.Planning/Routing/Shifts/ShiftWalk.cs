namespace HomeLine.Planning.Routing.Shifts;

/// <summary>
/// Says what an order costs. A first walk gives the earliest times; a second one, from the end, puts off what can be put off without anything becoming late, because
/// whoever leaves home later waits less.
/// </summary>
internal sealed class ShiftWalk
{
    private const int None = -1;

    private readonly ShiftProblem _problem;
    private readonly ShiftVisit[] _visits;
    private readonly ShiftPerson[] _people;
    private readonly int[] _travel;
    private readonly int _places;
    private readonly WalkedPerson[] _walked;
    private readonly WalkedPart[] _first, _second;
    private long _cost, _waiting, _forbidden;
    private int _largestLateness;

    public ShiftWalk(ShiftProblem problem)
    {
        _problem = problem;
        (_visits, _people) = ([.. problem.Visits], [.. problem.People]);
        (_travel, _places) = (problem.Travel, problem.Places);
        _walked = new WalkedPerson[_people.Length];
        (_first, _second) = (new WalkedPart[_visits.Length], new WalkedPart[_visits.Length]);
    }

    /// <summary>Times of the last order walked.</summary>
    public WalkedPart PartOf(int visit, bool second) => second ? _second[visit] : _first[visit];

    /// <summary>How much of what is not allowed at all the last order held, in minutes and visits; each is in its cost at <see cref="ShiftPrices.Forbidden"/>.</summary>
    public long Forbidden => _forbidden;

    public long Cost(ShiftOrder order)
    {
        (_cost, _waiting, _forbidden, _largestLateness) = (0, 0, 0, 0);
        for (int p = 0; p < _walked.Length; p++)
        {
            ShiftPerson person = _people[p];
            _walked[p] = new WalkedPerson { Free = person.Opens, Place = person.Start, Hungry = person.Lunch && _problem.Lunch is not null, FirstVisit = None };
        }

        foreach (int visit in order.Order)
            if (!order.Out[_visits[visit].Patient])
                Forward(order, visit);
        GoHome();
        for (int at = order.Order.Length - 1; at >= 0; at--)
            if (!order.Out[_visits[order.Order[at]].Patient])
                Backward(order, order.Order[at]);
        foreach (bool left in order.Out)
            if (left)
                _cost += _problem.Prices.LeftOut;
        Settle();
        return _cost;
    }

    private void Forward(ShiftOrder order, int v)
    {
        ShiftVisit visit = _visits[v];
        int p = order.First[v], q = order.Second[v], from = order.From[v];
        ref WalkedPart one = ref _first[v];
        one = Arrive(p, v, visit.Place, (order.Lunch[v] & 1) != 0);
        one.Start = StartAt(visit, from, one.Ready, visit.First.Duration);
        if (q < 0)
        {
            Serve(p, visit, visit.First, ref one);
            return;
        }

        ref WalkedPart two = ref _second[v];
        two = Arrive(q, v, visit.Place, (order.Lunch[v] & 2) != 0);
        two.Start = StartAt(visit, from, Math.Max(two.Ready, one.Start + visit.LeastGap), visit.Second!.Duration);
        one.Start = Math.Max(one.Start, two.Start - visit.MostGap);
        if (visit.SameWindow)
        {
            int window = Math.Max(WindowOf(visit, one.Start), WindowOf(visit, two.Start));
            one.Start = Math.Max(one.Start, visit.Windows[window].Opens);
            two.Start = Math.Max(two.Start, visit.Windows[window].Opens);
        }

        Serve(p, visit, visit.First, ref one);
        Serve(q, visit, visit.Second, ref two);
    }

    private WalkedPart Arrive(int p, int v, int place, bool lunchFirst)
    {
        ref WalkedPerson person = ref _walked[p];
        int leg = _travel[(person.Place * _places) + place];
        person.Work += leg;
        _cost += leg * _problem.Prices.Travel;
        if (person.FirstVisit == None) person.FirstVisit = v;
        var part = new WalkedPart { Ready = person.Free + leg, Lunch = None };
        if (lunchFirst) Eat(ref person, ref part, int.MaxValue);
        return part;
    }

    // Lunch as early as possible, if it can still begin in time and is over by then.
    private void Eat(ref WalkedPerson person, ref WalkedPart part, int by)
    {
        if (!person.Hungry) return;
        ShiftLunch lunch = _problem.Lunch!;
        int begin = Math.Max(part.Ready, lunch.Opens);
        if (begin > lunch.LatestStart || begin + lunch.Minutes > by) return;
        person.Hungry = false;
        part.Lunch = begin;
        part.Ready = begin + lunch.Minutes;
    }

    private void Serve(int p, ShiftVisit visit, ShiftPart asked, ref WalkedPart part)
    {
        ref WalkedPerson person = ref _walked[p];
        Eat(ref person, ref part, part.Start);
        int late = Math.Max(0, part.Start - LatestStart(visit, part.Start, asked.Duration));
        part.Latest = late > 0 ? part.Start : LatestStart(visit, part.Start, asked.Duration);
        int next = WindowOf(visit, part.Start) + 1;
        if (next < visit.Windows.Length) part.Latest = Math.Max(part.Start, Math.Min(part.Latest, visit.Windows[next].Opens - 1));
        Pay(late, _problem.Prices.Lateness);
        _largestLateness = Math.Max(_largestLateness, late);
        if (!asked.Preferred.IsDefaultOrEmpty && !asked.Preferred.Contains(p)) _cost += _problem.Prices.NotPreferred;
        person.Free = part.Start + asked.Duration;
        person.Place = visit.Place;
        person.Work += asked.Duration;
    }

    /// <summary>The earliest start that is in time, or a late one where waiting for the next window would cost more.</summary>
    private int StartAt(ShiftVisit visit, int from, int ready, int duration)
    {
        int start = Math.Max(ready, visit.Windows[from].Opens);
        for (int w = from; w < visit.Windows.Length; w++)
        {
            int late = start - LatestStart(visit, start, duration);
            if (late <= 0 || w + 1 == visit.Windows.Length) return start;
            int wait = visit.Windows[w + 1].Opens - start;
            if (wait > 0 && late * _problem.Prices.Lateness > wait * Math.Max(1, _problem.Prices.Waiting)) start = visit.Windows[w + 1].Opens;
        }

        return start;
    }

    private int LatestStart(ShiftVisit visit, int start, int duration) =>
        visit.Windows[WindowOf(visit, start)].Closes - (_problem.WindowsBoundTheEnd ? duration : 0);

    private static int WindowOf(ShiftVisit visit, int start)
    {
        int w = visit.Windows.Length - 1;
        while (w > 0 && visit.Windows[w].Opens > start) w--;
        return w;
    }

    private void GoHome()
    {
        for (int p = 0; p < _walked.Length; p++)
        {
            ref WalkedPerson person = ref _walked[p];
            person.NextPlace = None;
            if (person.FirstVisit == None) continue;
            int leg = _travel[(person.Place * _places) + _people[p].End], back = person.Free + leg;
            person.Work += leg;
            _cost += leg * _problem.Prices.Travel;
            Pay(Math.Max(0, back - _people[p].Closes), _problem.Prices.Overtime);
            person.Idle = Math.Max(0, _people[p].Closes - back);
        }
    }

    private void Backward(ShiftOrder order, int v)
    {
        ShiftVisit visit = _visits[v];
        int p = order.First[v], q = order.Second[v];
        ref WalkedPart one = ref _first[v];
        int latest = Latest(p, visit, visit.First, one);
        if (q < 0)
        {
            PutOff(p, v, visit.First, ref one, latest);
            return;
        }

        ref WalkedPart two = ref _second[v];
        int other = Math.Min(Latest(q, visit, visit.Second!, two), latest + visit.MostGap);
        PutOff(p, v, visit.First, ref one, Math.Min(latest, other - visit.LeastGap));
        PutOff(q, v, visit.Second!, ref two, other);
    }

    private int Latest(int p, ShiftVisit visit, ShiftPart asked, WalkedPart part)
    {
        WalkedPerson person = _walked[p];
        if (person.NextPlace == None) return part.Start;
        int leave = person.Due - _travel[(visit.Place * _places) + person.NextPlace];
        return Math.Max(part.Start, Math.Min(part.Latest, leave - asked.Duration));
    }

    private void PutOff(int p, int v, ShiftPart asked, ref WalkedPart part, int start)
    {
        ref WalkedPerson person = ref _walked[p];
        int place = _visits[v].Place;
        if (person.NextPlace != None) Wait(ref person, person.Due - _travel[(place * _places) + person.NextPlace] - start - asked.Duration, counts: true);
        part.Start = start;
        person.Due = start;
        person.NextPlace = place;
        if (part.Lunch == None) return;
        ShiftLunch lunch = _problem.Lunch!;
        part.Lunch = Math.Min(start - lunch.Minutes, lunch.LatestStart);
        Wait(ref person, start - lunch.Minutes - part.Lunch, counts: person.FirstVisit != v);
        person.Due = part.Lunch;
    }

    private void Pay(long amount, long price)
    {
        _cost += amount * price;
        if (price == ShiftPrices.Forbidden) _forbidden += amount;
    }

    private void Wait(ref WalkedPerson person, int minutes, bool counts)
    {
        person.Idle += minutes;
        if (counts) _waiting += minutes;
    }

    private void Settle()
    {
        ShiftPrices prices = _problem.Prices;
        long work = 0;
        int idle = 0;
        for (int p = 0; p < _walked.Length; p++)
        {
            ref WalkedPerson person = ref _walked[p];
            ShiftPerson asked = _people[p];
            if (person.FirstVisit == None) person.Idle = asked.Closes - asked.Opens;
            else Wait(ref person, person.Due - _travel[(asked.Start * _places) + person.NextPlace] - asked.Opens, counts: _problem.LeaveWithTheShift);
            if (person.Hungry) Pay(1, prices.MissedLunch);
            work += person.Work;
            idle = Math.Max(idle, person.Idle);
        }

        _cost += (_waiting * prices.Waiting) + (_largestLateness * prices.LargestLateness) + (idle * prices.LargestIdle);
        if (prices.Unevenness == 0) return;
        int people = _walked.Length;
        for (int p = 0; p < people; p++) _cost += prices.Unevenness * ((Math.Abs((_walked[p].Work * people) - work) + people - 1) / people);
    }
}

/// <summary>Where a person is in the walk, and what has come together.</summary>
internal struct WalkedPerson
{
    public int Free, Place, FirstVisit, NextPlace, Due, Idle;
    public long Work;
    public bool Hungry;
}

/// <summary>A part of a visit in the walk: when the person can begin, when lunch begins (or -1), when service starts and how far it could be put off.</summary>
internal struct WalkedPart
{
    public int Ready, Lunch, Start, Latest;
}
