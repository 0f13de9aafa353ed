namespace HomeLine.Planning.Routing;

/// <summary>
/// The price of carrying too much while searching. Where the vehicles are nearly full, a way between two good plans leads through overloaded ones; the price
/// moves so that about half of the plans passed through are not overloaded (the idea of Vidal et al. 2013; factors are our own).
/// </summary>
internal sealed class OverloadPricing
{
    private const double Dearer = 1.03, Cheaper = 0.97;

    private readonly int _most;
    private readonly double _meanDemand;
    private double _price;
    private double _least;

    public OverloadPricing(RoutingModel model, double share)
    {
        int capacity = model.Problem.Kinds.Length == 0 ? 0 : model.Problem.Kinds.Min(kind => kind.Capacity);
        long demand = model.Problem.Requests.Sum(request => (long)request.Demand);
        _meanDemand = model.Requests == 0 ? 0 : (double)demand / model.Requests;
        // Where no vehicle can ever be full there is nothing to price.
        _most = demand > capacity ? (int)Math.Min(capacity * share, 1_000_000) : 0;
    }

    public void Begin(RoutingState state, double leg)
    {
        state.MostOverload = _most;
        _price = Math.Max(1, leg / Math.Max(1, _meanDemand));
        _least = Math.Max(1, _price / 50);
        state.OverloadPrice = (int)_price;
    }

    public void Adapt(RoutingState state)
    {
        if (_most == 0) return;
        _price = Math.Clamp(_price * (state.Overload > 0 ? Dearer : Cheaper), _least, 100_000);
        state.OverloadPrice = (int)_price;
    }
}
