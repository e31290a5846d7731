autocmd BufNewFile,BufRead *.rig setfiletype rig
