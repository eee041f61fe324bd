namespace Triage.Reasoning.Learning;

/// <summary>The part of an epoch that takes long to fit. It follows from notes, jobs and settings alone, so that it can be kept.</summary>
/// <param name="Pooling">How strongly each step of a hierarchy leans on the one above it.</param>
/// <param name="Dependence">Which findings others depend on beyond the cause.</param>
public sealed record Fit(Pooling Pooling, Dependence Dependence);
