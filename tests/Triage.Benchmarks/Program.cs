using BenchmarkDotNet.Running;
using Triage.Benchmarks;

if (args is ["--ratios"])
{
    Ratios.Print(Console.Out);
}
else if (args is ["--targets"])
{
    Targets.Print(Console.Out);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(PosteriorBenchmarks).Assembly).Run(args);
}
