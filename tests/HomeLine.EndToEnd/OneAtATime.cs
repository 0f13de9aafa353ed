using Xunit.Sdk;
using Xunit.v3;

// Each walk has its own program and its own browser; two at once on a small machine wait for each other and prove nothing more.
[assembly: Parallelization(Mode = ParallelMode.None)]
