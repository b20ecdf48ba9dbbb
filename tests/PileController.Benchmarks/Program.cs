Console.WriteLine("benchmarks");
