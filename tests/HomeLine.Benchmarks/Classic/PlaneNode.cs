namespace HomeLine.Benchmarks.Classic;

/// <summary>A place of a classic instance, as the file has it: coordinates in the plane, window for the start of service, service time, demand.</summary>
internal sealed record PlaneNode(double X, double Y, double Demand, double Opens, double Closes, double Service)
{
    public double To(PlaneNode other) => Math.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y)));
}
