autocmd BufRead,BufNewFile *.dough setfiletype doughwright
