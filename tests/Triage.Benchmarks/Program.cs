using System.Globalization;
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
else if (args is ["--plans"])
{
    Plans.Speed(Console.Out);
}
else if (args is ["--plans", var first, var problems])
{
    Plans.Print(Console.Out, int.Parse(first, CultureInfo.InvariantCulture), int.Parse(problems, CultureInfo.InvariantCulture));
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(PosteriorBenchmarks).Assembly).Run(args);
}
