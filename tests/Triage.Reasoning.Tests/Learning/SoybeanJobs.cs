using System.Collections.Immutable;
using Triage.Reasoning.Learning;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>The soybean cases as closed jobs: each class a fault, each observed attribute a checked nominal finding, nothing known beforehand.</summary>
static class SoybeanJobs
{
    static readonly ImmutableArray<string> Levels = ["soybean"];

    public static Knowledge Knowledge(SoybeanCases cases) => new()
    {
        Faults = [.. cases.Classes.Select(c => new KnownFault(c, null, 1, 1))],
        Findings = [.. cases.Attributes.Select((attribute, a) => new KnownFinding(attribute, [.. cases.Levels[a]], true,
            [.. cases.Levels[a].Select(_ => 1.0 / cases.Levels[a].Length)], 0.01))],
    };

    public static IEnumerable<JobRecord> Outside(SoybeanCases cases, int fold) =>
        cases.Rows.Select((row, i) => (Row: row, Job: Job(cases, row, i))).Where(item => item.Row.Fold != fold).Select(item => item.Job);

    /// <summary>Everything is learned and chosen inside the nine training folds.</summary>
    public static SoybeanRanking Ranking(SoybeanCases cases, int fold) =>
        new([.. cases.Classes], Learner.Learn(Knowledge(cases), Outside(cases, fold), LearnerSettings.Default), Levels);

    public static JobRecord Job(SoybeanCases cases, (string Class, string[] Values, int Fold) row, int index) => new()
    {
        Id = $"row-{index}",
        Closed = DateTimeOffset.UnixEpoch.AddDays(index),
        Levels = Levels,
        Causes = [new(row.Class)],
        Weight = 1,
        Checked = [.. cases.Attributes.Zip(row.Values, (a, value) => new CheckedFinding(a, value)).Where(seen => seen.Value != "")],
    };

    public static double[] LogShares(SoybeanCases cases, Learned learned) =>
        [.. cases.Classes.Select(c => Math.Log(learned.Share(c, Levels).Mean))];

    public static double[][][] LogLinks(SoybeanCases cases, Learned learned) => [.. cases.Classes.Select(c => cases.Attributes
        .Select(a => (learned.Link(c, a, Levels) ?? learned.Ambient(a)).Mean.Select(Math.Log).ToArray()).ToArray())];
}
