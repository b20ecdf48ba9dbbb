Console.WriteLine("PileController");
